// SPDX-License-Identifier: GPL-3.0-or-later
// Where a pose is held: to a side of the shaft ("left"), along it ("in"), or at a section of the harness
// ("section-2/left").
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

// Which way it is pushed: across the shaft, along it, or a tap on the body.
enum class Side { left, right, in, out, tap };
[[nodiscard]] std::string_view sideName(Side side); // as in marks

struct PosePlace {
    std::string area; // a section of the harness, or another program's word; empty: the pose names a side only
    std::string way;  // to which side; may be another program's word, or empty

    [[nodiscard]] static PosePlace parse(std::string_view text);
    [[nodiscard]] static PosePlace at(Side side, int section = 0); // sections count from the sensor, from 1; 0: none
    [[nodiscard]] std::string text() const;                        // as it was parsed, byte for byte
    [[nodiscard]] bool empty() const { return area.empty() && way.empty(); }
    [[nodiscard]] std::optional<Side> side() const;
    [[nodiscard]] std::string_view section() const; // "2" of "section-2"; empty: none
    // Is this the section so called, `number` from the sensor?
    [[nodiscard]] bool isSection(std::string_view name, std::size_t number) const;
    [[nodiscard]] bool ofShaft() const { return area.empty() && side(); }
};

// Of a harness, from the sensor: its connector, two pieces of wire, the controller's connector.
[[nodiscard]] std::vector<std::string> usualSections();

} // namespace stillwire
