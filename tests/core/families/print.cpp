// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of the table, and the readings around a miss.
#include "tests/core/families/run.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {
namespace {

std::string cell(const Share& share) {
    if (share.of == 0) return text("%7s %6s", "-", "");
    return text("%7.2f %6.0f", share.percent(), share.of);
}

char phaseLetter(const Told& told, double at_s) {
    for (const ToldPhase& p : told.phases)
        if (p.when.from_s <= at_s && at_s <= p.when.to_s) return word(p.kind)[0];
    return '?';
}

bool flagged(const Told& told, double at_s) {
    return std::any_of(told.dropouts.begin(), told.dropouts.end(), [&](const ToldDropout& d) {
        return at_s >= d.when.from_s - 1e-6 && at_s <= d.when.to_s + 1e-6;
    });
}

} // namespace

std::string readingsAround(const Trace& trace, const Told& told, double at_s) {
    constexpr std::size_t kBefore = 5, kAll = 13;
    const auto first = std::partition_point(trace.readings.begin(), trace.readings.end(),
                                            [&](const Reading& r) { return toSeconds(r.time) < at_s - 1e-6; });
    auto i = static_cast<std::size_t>(first - trace.readings.begin());
    i -= std::min(i, kBefore);
    std::string all;
    for (const std::size_t end = std::min(trace.readings.size(), i + kAll); i < end; ++i) {
        const Reading& reading = trace.readings[i];
        const TrueReading& r = trace.truth.readings[i];
        const double t = toSeconds(reading.time);
        const std::string shown = reading.hasNumber() ? text("%8.4f", reading.volts_V) : "       -";
        all += text("    %c %9.3f s  %s V  true %8.4f", std::abs(t - at_s) < 1e-6 ? '>' : ' ', t, shown.c_str(),
                    r.level_V);
        all += r.touched() ? text(" off %+8.4f", r.off_V) : "             ";
        all += text("  noise %.4f  told %c%s", r.noise_V, phaseLetter(told, t), flagged(told, t) ? " FLAGGED" : "");
        all += r.required    ? "  (has to be seen)"
               : r.clear     ? "  (clear, returns too short)"
               : r.touched() ? "  (faint)"
                             : "";
        if (!reading.flags.none()) all += "  " + reading.flags.text();
        all += "\n";
    }
    return all;
}

std::string tableHead() {
    const auto two = [](const char* name) { return text(" |%7s %6s", name, "n"); };
    return text("%-14s %-4s%7s%7s", "family", "win", "traces", "hours") + two("seen%") + text(" |%7s", "false") +
           two("moves%") + two("sweep%") + two("wiggle%") + two("calm%") + two("level%") + two("blind%") +
           two("bunch%") + text(" |%7s%7s%7s%7s |%5s %6s\n", "f.trav", "f.jump", "f.wigg", "f.blin", "laws", "Mr/s");
}

std::string tableRow(const Family& family, bool windowsOn, const Score& s) {
    const auto two = [](const Share& share) { return " |" + cell(share); };
    return text("%-14s %-4s%7d%7.1f", family.name, windowsOn ? "on" : "off", s.traces, s.hours) + two(s.seen) +
           text(" |%7.1f", s.per50h(s.falseFlags)) + two(s.moves) + two(s.sweeps) + two(s.wiggles) + two(s.calm) +
           two(s.plateaus) + two(s.blind) + two(s.bunched) +
           text(" |%7.1f%7.1f%7.1f%7.1f |%5d %6.2f\n", s.per50h(s.falseTravel), s.per50h(s.falseJumps),
                s.per50h(s.falseWiggles), s.per50h(s.falseBlind), s.lawsBroken,
                s.examine_s > 0 ? s.readings / s.examine_s / 1e6 : 0);
}

} // namespace stillwire::families
