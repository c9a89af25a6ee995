// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/end_signals.hpp"
#include "app/cli/follow.hpp"
#include "app/cli/rescue.hpp"
#include "app/cli/spoken.hpp"
#include "app/shared/logging.hpp"
#include "app/shared/resources.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/describe/description.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/unfinished.hpp"

#include <cstdio>
#include <iostream>

namespace stillwire {

namespace {

Error missing(const char* option, const char* verb) {
    Error e;
    e.kind = Error::Kind::wrongUsage;
    e.where = option;
    e.what = "is needed to record";
    e.mend = {"name one; `stillwire %1` lists them", {verb}};
    return e;
}

// Told once: the file is the person's own.
void offerUnfinished(const std::string& notes) {
    for (const std::string& path : unfinishedCaptures(notes)) {
        std::cout << "A recording was cut short; what arrived is in " << path << "\n";
        forgetUnfinished(notes, path);
    }
}

} // namespace

Status runRecord(const Options& o) {
    if (o.sheet.empty()) return missing("--sheet", "sheets");
    if (o.meter.empty()) return missing("--meter", "meters");
    auto sheet = loadSheet(o.sheet);
    if (!sheet) return sheet.error();
    auto description = loadDescription(o.meter);
    if (!description) return description.error();

    CaptureHeader header;
    header.sheet = *sheet;
    header.meter = description->traits;
    SessionOptions options;
    options.guided = o.guided.value_or(true);
    options.capturePath = o.output;
    options.notesFolder = recordingNotes();
    offerUnfinished(options.notesFolder);
    options.seed = o.seed;
    std::optional<MeterPort> reference;
    if (!o.referencePort.empty()) {
        auto second = o.referenceMeter.empty() ? description : loadDescription(o.referenceMeter);
        if (!second) return second.error();
        reference = MeterPort{makeSerialLink(o.referencePort, second->link), *second};
    }
    auto session = Session::start({makeSerialLink(o.port, description->link), *description}, header, options,
                                  std::move(reference));
    if (!session) return session.error();

    // Ctrl-C ends the recording as the end of the run does: everything that arrived is in the file.
    catchEndSignals();
    Session& running = **session;
    followToTheEnd(running, o.duration_s, endAsked);

    const auto last = running.snapshot();
    // A capture without a reading tells nothing, and would stand in the way of the next try.
    if (last->findings->readings == 0 && last->recorderSays.empty()) {
        std::remove(last->capturePath.c_str());
        return Error{.where = o.port,
                     .what = "no reading came, and no capture is kept",
                     .mend = "switch the meter's data output on; `stillwire listen` shows what it sends"};
    }
    std::cout << "\n" << spokenVerdict(*last->findings, *sheet);
    if (const Status whole = recordedWhole(running, o.output); !whole) return whole;
    std::cout << "\n" << last->findings->readings << " readings are in " << o.output << "\n";
    return Done{};
}

} // namespace stillwire
