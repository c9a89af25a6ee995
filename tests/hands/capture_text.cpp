// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/capture_text.hpp"

#include "core/capture/writer.hpp"
#include "tests/hands/make_run.hpp"

#include <sstream>

namespace stillwire::hands {
namespace {

// A description whole, one level down in the header.
std::string below(const std::string& name, const std::string& toml) {
    std::string all = "[" + name + "]\n";
    std::istringstream lines(toml);
    for (std::string line; std::getline(lines, line); all += line + "\n") {
        if (line.rfind("[[", 0) == 0)
            line.insert(2, name + ".");
        else if (line.rfind('[', 0) == 0)
            line.insert(1, name + ".");
    }
    return all;
}

std::string headerToml(const LedRun& run) {
    std::string toml = "format = 1\nstarted = 2031-02-03T06:40:00+01:00\nnotes = \"\"\nprobe = \"sensor-side\"\n"
                       "black = \"battery-negative\"\nsections = [";
    const std::vector<std::string>& sections = run.subject.machine.sections;
    for (std::size_t i = 0; i < sections.size(); ++i) toml += (i > 0 ? ", \"" : "\"") + sections[i] + "\"";
    toml += "]\n[job]\nmachine = \"" + run.subject.machine.name + "\"\n";
    toml += below("sheet", run.subject.machine.sheetToml());
    const std::string meter = run.subject.meter.toml();
    return meter.empty() ? toml : toml + below("meter", meter);
}

} // namespace

std::string captureText(const LedRun& run) {
    std::string all;
    std::istringstream lines(headerToml(run));
    for (std::string line; std::getline(lines, line);) all += "# " + line + "\n";
    all += kColumns;
    std::size_t next = 0;
    for (const Reading& reading : run.readings) {
        for (; next < run.marks.size() && run.marks[next].time <= reading.time; ++next)
            all += formatRow(run.marks[next]);
        all += formatRow(reading);
    }
    for (; next < run.marks.size(); ++next) all += formatRow(run.marks[next]);
    return all;
}

} // namespace stillwire::hands
