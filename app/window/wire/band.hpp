// SPDX-License-Identifier: GPL-3.0-or-later
// Which window the trace is held against just now, in volts as the meter shows them.
#pragma once

#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/session/session.hpp"

#include <optional>

#include <QString>

namespace stillwire {

struct Band {
    QString name; // "released window"
    Window shown_V;
    std::optional<double> aim_V; // shown; while adjusting
    friend bool operator==(const Band& a, const Band& b) {
        return a.name == b.name && a.shown_V.min_V == b.shown_V.min_V && a.shown_V.max_V == b.shown_V.max_V &&
               a.aim_V == b.aim_V;
    }
};

// raw = G + level · (R - G) / nominal: the ratiometric formula turned round. Unmeasured wires count as nominal and 0
// V, so that a picture never depends on an assumption it does not show.
[[nodiscard]] double shownVolts(double level_V, const Sheet& sheet, const Findings& findings);

// Guided, the prompt says where to be; else the last mark that moved there. The reference and ground wires have their
// own limits. The aim stands while the sensor is being turned.
[[nodiscard]] Band bandUnderTest(const Sheet& sheet, const SessionSnapshot& snapshot);

// Where the red lead is, or is on its way to; guided by the prompt, else by the marks.
[[nodiscard]] Wire wireUnderTest(const SessionSnapshot& snapshot);
// Times in which the lead is not on the signal wire, by the marks; the last may reach to `now`.
struct AwaySpan {
    Time from{0}, to{0};
};
[[nodiscard]] std::vector<AwaySpan> awayFromSignal(const std::vector<Mark>& marks, Time now);

// When the lead was first on a wire, by the marks; a capture that nobody led was on one from its start.
[[nodiscard]] Time onAWireFrom(const std::vector<Mark>& marks, Time now);

// From the first held pose of a step to the step's end, by the marks; the last time that it was done.
struct PoseSpan {
    double from_s = 0, to_s = 0;
    [[nodiscard]] double length_s() const { return to_s - from_s; }
};
[[nodiscard]] std::optional<PoseSpan> posesOf(const std::vector<Mark>& marks, Step step, Time now);

// Name, with limits: "released window 3.90 to 4.40 V".
[[nodiscard]] QString bandLabel(const Band& band);

} // namespace stillwire
