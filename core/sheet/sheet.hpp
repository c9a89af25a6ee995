// SPDX-License-Identifier: GPL-3.0-or-later
// A sensor sheet: what the maker's literature says of one sensor. All volts are nominal, that is at the nominal
// reference.
#pragma once

#include "core/base/result.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

struct Window {
    double min_V = 0;
    double max_V = 0;
    [[nodiscard]] double middle_V() const { return 0.5 * (min_V + max_V); }
    [[nodiscard]] double half_V() const { return 0.5 * (max_V - min_V); }
    [[nodiscard]] bool contains(double v) const { return v >= min_V && v <= max_V; }
};

struct Position {
    std::string name;
    Window window;
    double aim_V = 0; // the middle of the window if the sheet gives none
    bool rest = false;
};

// The fault the wiggle must be able to find: shows in `share` of the poses of the shaft, and in `section_share` of
// those of the section of the harness that it lies in, `depth_V` deep, at most `level_share` of the level.
struct ReferenceFault {
    double share = 0.10;
    double sectionShare = 1.0 / 3;
    double depth_V = 0.5;
    double levelShare = 0.8;
};

struct Drive {
    double noneAt_V = 0;
    double fullAt_V = 0;
    double debounce_s = 0;
};

struct Sheet {
    std::string name;
    double nominal_V = 5.0;
    Window reference{4.75, 5.25};           // as read
    double maxDrop_V = 0.10;                // ground, as read
    std::vector<Position> positions;        // two or more, in the order of travel; exactly one rests
    std::optional<double> driftAllowance_V; // absent: the mount has no adjustment
    double play_V = 0.05;                   // default 1 % of nominal
    double leanMax_V = 0.25;                // the arm itself may turn so far with a push: default 5 % of nominal
    ReferenceFault referenceFault;
    std::optional<Drive> drive;
    std::vector<std::string> cautions;
    std::string source;           // optional: where the figures come from
    std::string toml;             // the text it was read from, for the capture header
    std::vector<Sentence> doubts; // what can be judged by, but makes little sense

    [[nodiscard]] const Position& rest() const;
    [[nodiscard]] double overVoltage_V() const { return 1.1 * nominal_V; } // own rule, no source: over it, stop
    [[nodiscard]] double span_V() const; // from the lowest window's middle to the highest's
    [[nodiscard]] const Position* find(std::string_view name) const; // null if there is none
};

// `where` names the file (or "capture header") in errors. Errors: not TOML, newer format, a missing or crossed
// window, fewer than two positions, a name twice, values that are not finite or make no sense; each with its line.
[[nodiscard]] Result<Sheet> parseSheet(std::string_view toml, const std::string& where);

} // namespace stillwire
