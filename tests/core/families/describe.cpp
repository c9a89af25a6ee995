// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet and the meter of a trace, as the texts that a person would have.
#include "tests/core/families/trace.hpp"

#include <algorithm>
#include <cstdio>

namespace stillwire::families {
namespace {

std::string line(const char* key, double value) {
    char text[80];
    std::snprintf(text, sizeof text, "%s = %.6g\n", key, value);
    return text;
}

std::string position(const std::string& name, Span window_V) {
    return "[[position]]\nname = \"" + name + "\"\n" + line("min_V", window_V.from_s) + line("max_V", window_V.to_s);
}

std::vector<double> levels(const Wire& wire) {
    std::vector<double> of;
    for (const Hold& hold : wire.holds) {
        of.push_back(hold.level_V + wire.drift_V(hold.from_s));
        of.push_back(hold.level_V + wire.drift_V(hold.to_s));
    }
    std::sort(of.begin(), of.end());
    return of;
}

// Windows around all levels; those that meet are one. One alone gets a neighbour, since a sheet has two or more.
std::vector<Span> windowsOn(const std::vector<double>& at_V) {
    std::vector<Span> windows;
    for (const double v : at_V) {
        const Span around{std::max(0.02, v - 0.12), std::min(4.98, v + 0.12)};
        if (!windows.empty() && windows.back().to_s + 0.01 > around.from_s)
            windows.back().to_s = std::max(windows.back().to_s, around.to_s);
        else
            windows.push_back(around);
    }
    if (windows.size() == 1) {
        if (windows[0].from_s > 0.5)
            windows.insert(windows.begin(), {0.1, 0.3});
        else
            windows.push_back({4.6, 4.8});
    }
    return windows;
}

// The two widest places that no level comes near; narrow windows, far from everything.
std::vector<Span> windowsOff(const std::vector<double>& at_V) {
    std::vector<double> walls{0.0};
    walls.insert(walls.end(), at_V.begin(), at_V.end());
    walls.push_back(5.0);
    std::vector<Span> free;
    for (std::size_t i = 0; i + 1 < walls.size(); ++i) free.push_back({walls[i], walls[i + 1]});
    std::sort(free.begin(), free.end(), [](const Span& a, const Span& b) { return a.length_s() > b.length_s(); });
    std::vector<Span> windows;
    if (free.size() < 2 || free[1].length_s() < 0.2) {
        const double third = free[0].length_s() / 3;
        windows = {{free[0].from_s + 0.9 * third, free[0].from_s + 1.2 * third},
                   {free[0].from_s + 1.8 * third, free[0].from_s + 2.1 * third}};
    } else {
        for (int i = 0; i < 2; ++i) {
            const Span& f = free[static_cast<std::size_t>(i)];
            const double half = std::min(0.1, 0.15 * f.length_s()), middle = 0.5 * (f.from_s + f.to_s);
            windows.push_back({middle - half, middle + half});
        }
    }
    std::sort(windows.begin(), windows.end(), [](const Span& a, const Span& b) { return a.from_s < b.from_s; });
    return windows;
}

} // namespace

std::string sheetFor(const Wire& wire, bool on) {
    const std::vector<double> at_V = levels(wire);
    const std::vector<Span> windows = on ? windowsOn(at_V) : windowsOff(at_V);
    std::string text =
        "format = 1\nname = \"Made sensor\"\n[reference]\nnominal_V = 5.0\nmin_V = 4.75\nmax_V = 5.25\n"
        "[ground]\nmax_drop_V = 0.1\n";
    for (std::size_t i = 0; i < windows.size(); ++i) {
        const bool last = i + 1 == windows.size();
        text += position(i == 0 ? "released" : last ? "pressed" : "notch-" + std::to_string(i), windows[i]);
    }
    return text;
}

std::string meterFor(const Meter& meter) {
    const auto range = [](double full_V, double resolution_V) {
        return "[[range]]\n" + line("full_scale_V", full_V) + line("resolution_V", resolution_V) +
               "accuracy_percent = 0.5\naccuracy_counts = 2\n";
    };
    std::string text = "format = 1\nname = \"Made meter\"\n" + line("interval_s", meter.interval_s) +
                       line("aperture_s", std::min(meter.aperture_s, meter.interval_s)); // longer is refused
    if (meter.rangesMeet_V > 0) text += range(meter.rangesMeet_V, meter.resolution_V / 10);
    text += range(meter.resolution_V < 0.005 ? 6 : 60, meter.resolution_V);
    return text + "[link]\nbaud = 9600\n[frame]\nkind = \"text\"\n";
}

} // namespace stillwire::families
