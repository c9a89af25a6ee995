// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/shared/resources.hpp"

#include <iomanip>
#include <iostream>

namespace stillwire {

namespace {

// A description that does not read is listed with what is wrong with it: the others still help.
template <class Load, class More> Status list(const std::string& kind, Load load, More more) {
    const auto named = listNamed(kind);
    if (named.empty()) {
        Error e;
        e.where = kind;
        e.what = "none were found";
        e.mend = "set STILLWIRE_RESOURCES to the resources folder";
        return e;
    }
    for (const Named& n : named) {
        const auto loaded = load(n.path);
        std::cout << std::left << std::setw(28) << n.name
                  << (loaded ? loaded.value().name : "unreadable: " + loaded.error().text()) << "\n";
        if (loaded) more(loaded.value());
    }
    return Done{};
}

constexpr const char* kIndent = "    ";

void tellWindows(const Sheet& sheet) {
    for (const Position& p : sheet.positions)
        std::cout << kIndent << p.name << ": " << plain(p.window.min_V, 2) << " to " << volts(p.window.max_V)
                  << (p.rest ? ", at rest" : "") << "\n";
}

void tellRanges(const MeterTraits& meter) {
    if (meter.interval_s > 0) std::cout << kIndent << "a reading every " << plain(meter.interval_s, 2) << " s\n";
    for (const MeterRange& range : meter.ranges)
        std::cout << kIndent << "to " << volts(range.fullScale_V, 1) << " in steps of "
                  << volts(range.resolution_V, 4) << "\n";
}

} // namespace

Status runSheets() { return list("sheets", loadSheet, tellWindows); }
Status runMeters() { return list("meters", loadMeter, tellRanges); }

} // namespace stillwire
