// SPDX-License-Identifier: GPL-3.0-or-later
// `analyse --explain`: how a file is read, without judging it.
#include "app/cli/commands.hpp"
#include "app/cli/spoken.hpp"
#include "app/shared/evaluate.hpp"
#include "app/shared/fitting_sheets.hpp"
#include "app/shared/resources.hpp"
#include "core/capture/taken.hpp"
#include "core/capture/writer.hpp"

#include <fstream>
#include <iostream>

namespace stillwire {

namespace {

constexpr std::size_t kLinesShown = 5, kLineShown = 100, kReadingsShown = 5;

// As they stand in the file; another encoding shows as it is.
void tellFirstLines(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::string line;
    std::cout << "The file begins\n";
    for (std::size_t i = 0; i < kLinesShown && std::getline(in, line); ++i) {
        while (!line.empty() && line.back() == '\r') line.pop_back();
        std::cout << "  " << line.substr(0, kLineShown) << (line.size() > kLineShown ? " …" : "") << "\n";
    }
}

void tellReading(const Reading& reading) {
    std::cout << "  " << formatTime(reading.time) << " s  "
              << (reading.hasNumber() ? formatVolts(reading.volts_V) + " V" : "no number");
    if (!reading.flags.none()) std::cout << "  " << reading.flags.text();
    std::cout << "\n";
}

} // namespace

Status runExplain(const Options& o) {
    std::vector<Reading> first;
    Watcher watcher;
    watcher.reading = [&](const Reading& reading, const PushResult&, const Examination&) {
        if (first.size() < kReadingsShown) first.push_back(reading);
    };
    auto read = evaluateCapture(o.file, {o.sheet, o.meter, o.import}, watcher);
    // How it is read hangs on no sheet: any will do where none is given.
    if (const auto sheets = listNamed("sheets"); !read && o.sheet.empty() && !sheets.empty()) {
        first.clear();
        read = evaluateCapture(o.file, {sheets.front().path, o.meter, o.import}, watcher);
    }
    if (!read) return read.error();
    if (o.file != kStandardInput) tellFirstLines(o.file);
    std::cout << "\nHow it is read\n";
    if (!read->summary.imported) std::cout << "  It is a capture.\n";
    if (read->summary.imported)
        for (const Sentence& sentence : takenSays(read->summary.taken))
            std::cout << "  " << sentence.english() << "\n";
    for (const Sentence& assumed : read->header.assumed) std::cout << "  Assumed: " << assumed.english() << "\n";
    for (const Sentence& warning : read->summary.warnings) std::cout << "  Warning: " << warning.english() << "\n";
    const Findings& found = read->findings;
    std::cout << "  " << found.readings << " readings over " << clockTime(found.duration);
    if (found.meter.interval_s > 0) std::cout << ", one every " << plain(found.meter.interval_s, 2) << " s";
    std::cout << "\n";
    for (const Reading& reading : first) tellReading(reading);
    const auto fitting = fittingSheets(found.plateaus);
    std::cout << "\nSheets that its levels fit\n" << (fitting.empty() ? "  none that is known by name\n" : "");
    for (const std::string& name : fitting) std::cout << "  " << name << "\n";
    return Done{};
}

} // namespace stillwire
