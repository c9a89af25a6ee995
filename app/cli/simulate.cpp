// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/simulate.hpp"

#include "app/cli/commands.hpp"
#include "app/cli/rescue.hpp"
#include "app/cli/serve.hpp"
#include "app/cli/write_file.hpp"
#include "app/shared/resources.hpp"
#include "core/capture/writer.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/session/session.hpp"

#include <chrono>
#include <iostream>
#include <thread>

namespace stillwire {

namespace {

struct Asked {
    BenchScript script;
    Sheet sheet;
    MeterDescription meter;
};

Error missing(const char* option, const char* kind) {
    Error e;
    e.kind = Error::Kind::wrongUsage;
    e.where = option;
    e.what = "is needed, and the script names none";
    e.mend = {"give a path, or a name among the %1", {byName(kind)}};
    return e;
}

Result<Asked> load(const Options& o) {
    Asked asked;
    if (!o.script.empty()) {
        auto path = pathOf(o.script, "bench");
        if (!path) return path.error();
        auto text = readText(*path);
        if (!text) return text.error();
        auto script = parseBenchScript(*text, *path);
        if (!script) return script.error();
        asked.script = std::move(*script);
    }
    const std::string sheetName = o.sheet.empty() ? asked.script.sheet : o.sheet;
    const std::string meterName = o.meter.empty() ? asked.script.meter : o.meter;
    if (sheetName.empty()) return missing("--sheet", "sheets");
    if (meterName.empty()) return missing("--meter", "meters");
    auto sheet = loadSheet(sheetName);
    if (!sheet) return sheet.error();
    asked.sheet = std::move(*sheet);
    auto meter = loadDescription(meterName);
    if (!meter) return meter.error();
    asked.meter = std::move(*meter);
    return asked;
}

Status writeCapture(const std::string& path, const Capture& capture) {
    auto writer = CaptureWriter::create(path, capture.header);
    if (!writer) return writer.error();
    for (const Capture::Row& row : capture.rows) {
        const Status done =
            row.isMark ? writer->append(capture.marks[row.index]) : writer->append(capture.readings[row.index]);
        if (!done) return done;
    }
    return writer->sync();
}

// The script's hand follows the procedure over the meter's bytes, as a person would, as fast as it goes.
Status runGuided(const Options& o, Asked asked) {
    auto meter = simulatedMeter(asked.script, asked.sheet, asked.meter, o.seed, 0, {});
    if (!meter) return meter.error();
    CaptureHeader header;
    header.started = asked.script.started;
    header.notes = asked.script.notes;
    header.probe = asked.script.setup.side;
    header.black = asked.script.setup.black;
    header.sheet = asked.sheet;
    header.meter = asked.meter.traits;
    SessionOptions options;
    options.capturePath = o.output;
    options.seed = o.seed;
    options.hand = meter->hand;
    auto session = Session::start({std::move(meter->link), asked.meter}, header, options);
    if (!session) return session.error();
    while ((*session)->running()) std::this_thread::sleep_for(std::chrono::milliseconds(10));
    (*session)->stop();
    if (const Status whole = recordedWhole(**session, o.output); !whole) return whole;
    if (!o.truth.empty())
        if (const Status done = writeWhole(o.truth, truthJson(meter->truth()), o.force); !done) return done;
    // Faster than anybody reads: told from the capture, which holds it all.
    Options replayed = o;
    replayed.file = o.output;
    replayed.sheet = replayed.meter = {};
    return runReplay(replayed);
}

} // namespace

Status runSimulate(const Options& o) {
    if (!o.truth.empty() && o.truth == o.output)
        return Error{.kind = Error::Kind::wrongUsage,
                     .where = o.truth,
                     .what = "is both the capture and its truth",
                     .mend = "give each a name of its own"};
    if (!o.truth.empty())
        if (auto free = mayWrite(o.truth, o.force); !free) return free;
    auto asked = load(o);
    if (!asked) return asked.error();
    if (o.output.empty() && !o.serve) return missing("-o", "files to write");
    if (o.guided.value_or(false) && !o.serve) return runGuided(o, std::move(*asked));
    auto simulation = simulate(asked->script, asked->sheet, asked->meter.traits, o.seed);
    if (!simulation) return simulation.error();
    if (!o.truth.empty())
        if (const Status done = writeWhole(o.truth, truthJson(simulation->truth), o.force); !done) return done;
    if (o.serve) return serve(simulation->capture, asked->meter, o.meter.empty() ? asked->script.meter : o.meter);
    if (const Status done = writeCapture(o.output, simulation->capture); !done) return done;
    std::cout << simulation->capture.readings.size() << " readings are in " << o.output << "\n";
    return Done{};
}

} // namespace stillwire
