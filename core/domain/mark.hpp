// SPDX-License-Identifier: GPL-3.0-or-later
// Marks: every decision of a person, or of the procedure, that can change a verdict. Written as `KIND:ARGUMENT`,
// parsed once, where the mark is made.
#pragma once

#include "core/base/time.hpp"
#include "core/domain/pose_place.hpp"
#include "core/domain/step.hpp"

#include <string>
#include <variant>

namespace stillwire {

struct StepMark { // opens a step, closes the one before
    Step step;
};
struct StepEndMark {};
struct PoseMark {
    PosePlace place;
};
struct PositionMark { // is being moved there
    std::string name;
};
struct KeyMark {
    bool on;
};
struct SkipMark {
    Step step;
};
struct UndoMark {
    Step step;
};
struct TurnMark {
    double turns; // part-turns of the sensor, signed; 0: not known how far
};
struct ProbeMark {
    ProbeSide side;
};
enum class Arm { onStop, offStop, held, free };
struct ArmMark {
    Arm arm;
};
struct GapMark {};
struct NoteMark {
    std::string text;
};
struct UnknownMark { // kept as written, and ignored
    std::string text;
};
using MarkContent = std::variant<UnknownMark, StepMark, StepEndMark, PoseMark, PositionMark, KeyMark, SkipMark,
                                 UndoMark, TurnMark, ProbeMark, ArmMark, GapMark, NoteMark>;

[[nodiscard]] MarkContent parseMark(std::string_view text); // a step or a word that is not known: UnknownMark
[[nodiscard]] std::string writeMark(const MarkContent& content);

class Mark {
public:
    Mark() = default;
    Mark(Time at, std::string text) : time(at), text_(std::move(text)), content_(parseMark(text_)) {}
    Mark(Time at, MarkContent content) : time(at), text_(writeMark(content)), content_(std::move(content)) {}

    Time time{0};
    [[nodiscard]] const std::string& text() const { return text_; } // as written in the capture, byte for byte
    [[nodiscard]] const MarkContent& content() const { return content_; }
    template <class Kind> [[nodiscard]] const Kind* as() const { return std::get_if<Kind>(&content_); } // or null
    [[nodiscard]] bool opens(Step step) const { return as<StepMark>() && as<StepMark>()->step == step; }

private:
    std::string text_;
    MarkContent content_;
};

} // namespace stillwire
