// SPDX-License-Identifier: GPL-3.0-or-later
// Words for people: what core leaves to the window to name.
#pragma once

#include "app/language/say.hpp"
#include "app/window/look/paint.hpp"
#include "core/findings/findings.hpp"
#include "core/procedure/procedure.hpp"
#include "meters/session/session.hpp"

#include <QString>
#include <QStringList>

namespace stillwire {

[[nodiscard]] QString shortStepName(Step step);             // "shaft", for the path
[[nodiscard]] QString decisionWords(Decision decision);     // "replace the sensor"
[[nodiscard]] QString verdictWords(const Verdict& verdict); // and on which condition
[[nodiscard]] QString phaseWord(PhaseKind kind);            // "quiet"
[[nodiscard]] QString blindCauseWords(BlindCause cause);    // what to do about it

// What is happening, for the box beside the number. A dropout stays on show for a moment after it ended: it is over
// sooner than an eye can turn.
struct StateWord {
    WireState state = WireState::silent;
    Shape shape = Shape::dots;
    QString word, detail;
    friend bool operator==(const StateWord&, const StateWord&) = default;
};
inline constexpr double kDropoutStays_s = 2.0;
[[nodiscard]] StateWord stateWord(const SessionSnapshot& snapshot);

// All that is to be minded before the step, the stop first.
[[nodiscard]] QStringList cautionWords(const Prompt& prompt);

// "red lead on the signal wire"; empty before it is on any.
[[nodiscard]] QString wireWords(Wire wire, bool onItsWay);

// Never more than four digits: the number keeps its place and its size.
[[nodiscard]] QString numberText(double volts_V, double resolution_V);

} // namespace stillwire
