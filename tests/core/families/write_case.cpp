// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/write_case.hpp"

#include "core/capture/writer.hpp"
#include "tests/core/families/score.hpp"

#include <filesystem>
#include <fstream>

namespace stillwire::families {
namespace {

std::string list(const std::vector<Span>& spans) {
    std::string all;
    for (const Span& s : spans) all += text("%s[%.6f, %.6f]", all.empty() ? "" : ", ", s.from_s, s.to_s);
    return "[" + all + "]";
}

template <typename Wanted> std::string times(const Trace& trace, Wanted wanted) {
    std::string all;
    for (std::size_t i = 0; i < trace.readings.size(); ++i)
        if (wanted(trace.truth.readings[i]))
            all += text("%s%.6f", all.empty() ? "" : ", ", toSeconds(trace.readings[i].time));
    return "[" + all + "]";
}

std::string truthJson(const Trace& trace) {
    const Truth& truth = trace.truth;
    std::string holds;
    for (const Hold& h : truth.holds)
        holds += text("%s[%.6f, %.6f, %.6f]", holds.empty() ? "" : ", ", h.from_s, h.to_s, h.level_V);
    std::string plateaus;
    for (const Plateau& p : truth.plateaus)
        plateaus += text("%s[%.6f, %.6f, %.6f]", plateaus.empty() ? "" : ", ", p.when.from_s, p.when.to_s,
                         truth.readings[p.last].level_V);
    std::vector<Span> travel, sweeps, wiggles;
    for (const TrueMove& m : truth.moves) {
        if (!m.scored) continue;
        travel.push_back({m.begins.from_s, m.ends.to_s});
        if (m.move.sweep) sweeps.push_back(m.shown);
    }
    for (const TrueWiggle& w : truth.wiggles) wiggles.push_back(w.sure);
    const auto faint = [](const TrueReading& r) { return r.touched() && !r.required && r.off_V != 0; };
    const double first_s = trace.readings.empty() ? 0 : toSeconds(trace.readings.front().time);
    std::string json = "{\"kind\": \"" + trace.family + "\", ";
    json += text("\"interval\": %.6g, \"t0\": %.6f, \"iso\": false, \"duration\": %.6f,\n", trace.meter.interval_s,
                 first_s, truth.duration_s);
    json += "\"visible\": " + times(trace, [](const TrueReading& r) { return r.required; }) + ",\n";
    json += "\"faint\": " + times(trace, faint) + ",\n";
    json += "\"touched\": " + times(trace, [](const TrueReading& r) { return r.touched(); }) + ",\n";
    json +=
        "\"travel\": " + list(travel) + ",\n\"sweeps\": " + list(sweeps) + ",\n\"wiggles\": " + list(wiggles) + ",\n";
    json += "\"blind\": " + list(truth.blind) + ",\n\"calm\": " + list(truth.calm) + ",\n";
    return json + "\"holds\": [" + holds + "],\n\"plateaus\": [" + plateaus + "]}\n";
}

bool write(const std::filesystem::path& path, const std::string& content) {
    std::ofstream file(path, std::ios::binary);
    file << content;
    return static_cast<bool>(file.flush());
}

} // namespace

bool writeCase(const Trace& trace, const std::string& folder) {
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    std::string rows = "time_s,volts,flags,mark\n";
    std::size_t mark = 0;
    for (std::size_t i = 0; i <= trace.readings.size(); ++i) {
        for (; mark < trace.marks.size() && trace.marks[mark].first == i; ++mark)
            rows += formatRow(trace.marks[mark].second);
        if (i == trace.readings.size()) break;
        Reading reading = trace.readings[i];
        if (trace.meter.stamps == Stamps::wholeSecond) reading.time -= reading.time % std::chrono::seconds(1);
        rows += formatRow(reading);
    }
    const std::filesystem::path base =
        std::filesystem::path(folder) / text("%s-%05llu-%s", trace.family.c_str(),
                                             static_cast<unsigned long long>(trace.seed),
                                             trace.windowsOn ? "on" : "off");
    return write(base.string() + ".csv", rows) && write(base.string() + ".sheet.toml", trace.sheetToml) &&
           write(base.string() + ".meter.toml", trace.meterToml) &&
           write(base.string() + ".truth.json", truthJson(trace));
}

} // namespace stillwire::families
