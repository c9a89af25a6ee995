// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/trace_change.hpp"

#include <algorithm>

namespace stillwire {
namespace {

bool same(const Excursion& a, const Excursion& b) {
    return a.from == b.from && a.to == b.to && a.extreme_V == b.extreme_V && a.direction == b.direction &&
           a.kind == b.kind;
}
bool same(const LevelJump& a, const LevelJump& b) { return a.at == b.at; }
bool same(const BlindSpan& a, const BlindSpan& b) { return a.from == b.from && a.to == b.to; }
bool same(const MachineStrip::Point& a, const MachineStrip::Point& b) {
    return a.time == b.time && a.drive == b.drive;
}

template <class T> bool same(const std::vector<T>& a, const std::vector<T>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const T& x, const T& y) { return same(x, y); });
}

} // namespace

bool onlyGrew(const SessionSnapshot& before, const SessionSnapshot& after) {
    const Findings &a = *before.findings, &b = *after.findings;
    const auto &was = a.machine.points, &is = b.machine.points;
    return !before.trace.empty() && after.trace.size() >= before.trace.size() &&
           before.marks.size() == after.marks.size() && before.link == after.link &&
           before.prompt.finished == after.prompt.finished && same(a.excursions, b.excursions) &&
           same(a.jumps, b.jumps) && same(a.blind, b.blind) && a.machine.stops == b.machine.stops &&
           a.machine.stopsPossible == b.machine.stopsPossible && is.size() >= was.size() &&
           std::equal(was.begin(), was.end(), is.begin(), [](const auto& x, const auto& y) { return same(x, y); });
}

} // namespace stillwire
