// SPDX-License-Identifier: GPL-3.0-or-later
// How well a meter description fits what was heard. Pure.
#pragma once

#include "core/domain/reading.hpp"
#include "meters/describe/description.hpp"
#include "meters/find/heard.hpp"

#include <optional>

namespace stillwire {

// sure: three readings or more, next to nothing dropped, and frames that are no accident (LCD segments, a layout, a
// pattern, a unit beside the number, or an instrument that says who it is). likely: two, hardly anything dropped.
// possible: at least one. Own rules, no source.
enum class Sureness { none, possible, likely, sure };

struct Fit {
    Sureness sureness = Sureness::none;
    std::size_t bytes = 0;
    std::size_t dropped = 0; // after the first whole frame
    std::size_t readings = 0;
    std::size_t volts = 0; // readings that are plain DC volts
    std::optional<Reading> newest;
    double interval_s = 0; // from reading to reading, as heard; 0: fewer than two
};

// `identified`: the instrument said who it is.
[[nodiscard]] Fit fitOf(const MeterDescription& description, const Heard& heard, bool identified = false);

// True if `a` fits better.
[[nodiscard]] bool fitsBetter(const Fit& a, const Fit& b);

} // namespace stillwire
