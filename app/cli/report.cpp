// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/html.hpp"
#include "app/language/language.hpp"
#include "app/language/say.hpp"
#include "app/shared/evaluate.hpp"

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iostream>

namespace stillwire {

namespace {

Error cannotWrite(const std::string& path) {
    Error e;
    e.where = path;
    e.what = {"cannot be written: %1", {std::strerror(errno)}};
    e.mend = "check the folder, its permissions and the disk";
    return e;
}

} // namespace

Status runReport(const Options& o) {
    if (!o.output.ends_with(".html")) {
        Error e;
        e.where = o.output;
        e.what = "a report is written as .html";
        e.mend = "give -o a name that ends in .html, and print it from there";
        return e;
    }
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
    std::ofstream out(o.output, std::ios::binary);
    out << html;
    out.close();
    if (!out) return cannotWrite(o.output);
    std::cout << o.output << "\n";
    return Done{};
}

} // namespace stillwire
