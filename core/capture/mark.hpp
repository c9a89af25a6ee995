// SPDX-License-Identifier: GPL-3.0-or-later
// Marks: every decision of a person, or of the procedure, that can change a verdict. Written as `KIND:ARGUMENT`.
#pragma once

#include "core/base/time.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

enum class MarkKind {
    step,
    stepEnd,
    pose,
    position,
    keyOn,
    keyOff,
    skip,
    undo,
    turn,
    probe,
    arm,
    gap,
    note,
    unknown
};

struct Mark {
    Time time{0};
    std::string text; // as written in the capture, e.g. "pose:left"

    [[nodiscard]] MarkKind kind() const;
    [[nodiscard]] std::string_view argument() const; // after the first ':'; empty if none
};

// The steps of the procedure, in its order; the last two are offered after a first shaft dropout.
enum class Step {
    hookUp,
    reference,
    ground,
    coldStart,
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
    wiggleReference,
    wiggleGround
};
inline constexpr int kStepCount = 16;

[[nodiscard]] std::string_view stepName(Step step); // "wiggle-shaft"
[[nodiscard]] std::optional<Step> stepByName(std::string_view name);

} // namespace stillwire
