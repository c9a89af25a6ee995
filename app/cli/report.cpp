// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/html.hpp"
#include "app/cli/write_file.hpp"
#include "app/language/language.hpp"
#include "app/language/say.hpp"
#include "app/shared/evaluate.hpp"

#include <iostream>

namespace stillwire {

Status runReport(const Options& o) {
    if (!o.output.ends_with(".html")) {
        Error e;
        e.kind = Error::Kind::wrongUsage;
        e.where = o.output;
        e.what = "a report is written as .html";
        e.mend = "give -o a name that ends in .html, and print it from there";
        return e;
    }
    if (auto free = mayWrite(o.output, o.force, o.file); !free) return free;
    Trace trace;
    std::vector<Mark> marks;
    std::optional<Findings> before; // the sensor was turned
    bool turned = false;
    Watcher watcher;
    watcher.reading = [&](const Reading& r, const PushResult&, const Examination&) {
        trace.append({r.time, r.volts_V});
    };
    watcher.mark = [&](const Mark& m, const Examination& examination) {
        marks.push_back(m);
        turned = turned || m.as<TurnMark>() != nullptr;
        if (!before && m.opens(Step::adjust)) before = examination.findings();
    };
    auto evaluation = evaluateCapture(o.file, {o.sheet, o.meter, o.import}, watcher);
    if (!evaluation) return evaluation.error();
    if (!turned) before.reset();
    const Speaking speaking; // of all the commands only this one writes for a customer
    // Another program's file has no capture rows to hash.
    auto hash = captureHash(o.file);
    const TraceSnapshot snapshot = trace.snapshot();
    const std::string html =
        reportHtml({*evaluation, snapshot, marks, o.file, hash ? *hash : "", before, languageSpoken().toStdString(),
                    [](const Sentence& s) { return say(s).toStdString(); }});
    if (auto written = writeWhole(o.output, html, o.force); !written) return written;
    std::cout << o.output << "\n";
    return Done{};
}

} // namespace stillwire
