// SPDX-License-Identifier: GPL-3.0-or-later
// The one table of steps. Whatever else is said about each step is derived from it or checked against it.
#pragma once

#include "core/domain/wire.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace stillwire {

// In the order of the procedure; the last three are added after a first shaft dropout.
enum class Step {
    hookUp,
    reference,
    ground,
    coldStart,
    leadCheck,
    wiggleShaft,
    wiggleHarness,
    fullPress,
    sweep,
    release,
    lift,
    warmRepeat,
    adjust,
    confirm,
    putBack,
    connectorHeld,
    wiggleReference,
    wiggleGround
};
inline constexpr int kStepCount = static_cast<int>(Step::wiggleGround) + 1;

// What may happen to the level without being a fault.
enum class ExpectedMotion {
    still,     // hold still: a shift that stays is a level jump
    positions, // moves to marked positions, still between them
    moving,    // the step is about moving, or the probe tip is on its way; it holds no marked positions (yet)
    free,      // no judgement of movement at all: connecting, turning, lifting, putting back
    sweep,     // moves slowly; dropouts show against neighbours
    unmarked   // no step has been named
};

// What is shaken in held poses; heldShaft: the shaft, the other hand holding the connector; asMarked: where each pose
// says.
enum class Wiggled { nothing, shaft, harness, leads, heldShaft, asMarked };

// required: for keep. reported: left out, it is said to be not tested. offered: not in the order, added where it is
// wanted.
enum class Need { required, reported, optional, offered };

// Of a lead check: pushes of each of the two leads.
inline constexpr int kPosesOfALead = 5;

// Which readings count as cold. same: as the step before; late: its own do not, whatever follows.
enum class Warmth { same, cold, warm, late };

struct StepTraits {
    Step step;
    std::string_view name; // as in marks, and of its drawing
    Wire wire;             // whose readings come in it
    Wire lead;             // where the red lead is to be; none: wherever it is
    ExpectedMotion motion;
    Wiggled wiggled;
    Need need;
    Warmth warmth;

    [[nodiscard]] constexpr bool wiggles() const { return wiggled != Wiggled::nothing; }
    [[nodiscard]] constexpr bool requiredWiggle() const { return wiggles() && need == Need::required; }
    // The operator moves the shaft to positions and lets it go.
    [[nodiscard]] constexpr bool visits() const { return wire == Wire::signal && motion == ExpectedMotion::moving; }
};

inline constexpr std::array<StepTraits, kStepCount> kStepTable = [] {
    using enum ExpectedMotion;
    using enum Wiggled;
    using enum Need;
    using enum Warmth;
    return std::array<StepTraits, kStepCount>{
        {{Step::hookUp, "hook-up", Wire::signal, Wire::reference, free, nothing, optional, same},
         {Step::reference, "reference", Wire::reference, Wire::reference, moving, nothing, required, same},
         {Step::ground, "ground", Wire::ground, Wire::ground, moving, nothing, required, same},
         {Step::coldStart, "cold-start", Wire::signal, Wire::signal, still, nothing, required, cold},
         {Step::leadCheck, "lead-check", Wire::signal, Wire::signal, still, leads, reported, same},
         {Step::wiggleShaft, "wiggle-shaft", Wire::signal, Wire::signal, still, shaft, required, same},
         {Step::wiggleHarness, "wiggle-harness", Wire::signal, Wire::signal, still, harness, required, same},
         {Step::fullPress, "full-press", Wire::signal, Wire::signal, moving, nothing, required, same},
         {Step::sweep, "sweep", Wire::signal, Wire::signal, ExpectedMotion::sweep, nothing, reported, same},
         {Step::release, "release", Wire::signal, Wire::signal, moving, nothing, required, same},
         {Step::lift, "lift", Wire::signal, Wire::signal, free, nothing, reported, same},
         {Step::warmRepeat, "warm-repeat", Wire::signal, Wire::signal, still, asMarked, reported, warm},
         {Step::adjust, "adjust", Wire::signal, Wire::signal, free, nothing, optional, late},
         {Step::confirm, "confirm", Wire::signal, Wire::signal, moving, nothing, optional, late},
         {Step::putBack, "put-back", Wire::signal, Wire::none, free, nothing, optional, same},
         {Step::connectorHeld, "connector-held", Wire::signal, Wire::signal, still, heldShaft, offered, same},
         {Step::wiggleReference, "wiggle-reference", Wire::reference, Wire::reference, still, asMarked, offered,
          same},
         {Step::wiggleGround, "wiggle-ground", Wire::ground, Wire::ground, still, asMarked, offered, same}}};
}();

// A row for every step, in the order of Step; for each table that has one row per step.
template <class Rows> constexpr bool isTableOfSteps(const Rows& rows) {
    int next = 0;
    for (const auto& row : rows)
        if (row.step != static_cast<Step>(next++)) return false;
    return next == kStepCount;
}
static_assert(isTableOfSteps(kStepTable));

[[nodiscard]] constexpr const StepTraits& traits(Step step) { return kStepTable[static_cast<std::size_t>(step)]; }
[[nodiscard]] constexpr std::string_view stepName(Step step) { return traits(step).name; } // "wiggle-shaft"
[[nodiscard]] constexpr std::optional<Step> stepByName(std::string_view name) {
    const auto row =
        std::find_if(kStepTable.begin(), kStepTable.end(), [&](const StepTraits& t) { return t.name == name; });
    return row == kStepTable.end() ? std::nullopt : std::optional(row->step);
}

} // namespace stillwire
