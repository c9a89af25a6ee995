// SPDX-License-Identifier: GPL-3.0-or-later
// What the stages tell while readings go in: excursions, jumps, travel, held readings; each put in its place.
#include "core/examination_parts.hpp"

#include <utility>

namespace stillwire {

namespace {
constexpr double kLeansShare = 0.4; // of the threshold: a pose that leans to one side
} // namespace

Excursion Examination::Parts::told(Excursion e, bool shoulder) const {
    const Context& at = timeline.at(e.from - aperture);
    e.step = at.step;
    e.unmarked = !at.step;
    e.poseIndex = at.poseIndex;
    if (at.poseIndex >= 0) e.pose = timeline.poses()[static_cast<std::size_t>(at.poseIndex)].where;
    // A shift no deeper than the sheet's play (and a count, for readings are rounded) that holds through the pose is
    // the bushing, not the track. A level first found while the arm was held to one side may be off as much.
    const bool middleUnknown = tracker.level().begunBy() == Hold::stirred;
    e.play_V = (middleUnknown ? 2 : 1) * setup.sheet.play_V + resolutionOf(meter);
    const bool mayBePlay = at.poseIndex >= 0 || (at.step && traits(*at.step).requiredWiggle());
    if (mayBePlay && e.depth_V() <= e.play_V && (e.readings >= 2 || shoulder)) e.kind = ExcursionKind::play;
    return e;
}

void Examination::Parts::excursionFlagged(Time, Direction direction) {
    flagged = true;
    flaggedDirection = direction;
}

void Examination::Parts::excursionEnded(const Excursion& excursion, bool shoulder) { place(excursion, shoulder); }

void Examination::Parts::foundOffSweep(const Excursion& excursion) {
    excursionFlagged(excursion.from, excursion.direction);
    place(excursion, false);
}

void Examination::Parts::place(Excursion excursion, bool shoulder) {
    Excursion e = told(std::move(excursion), shoulder);
    // A needle on a supply wire shivers by as much.
    const bool probing = e.step && traits(*e.step).wire != Wire::signal && !traits(*e.step).wiggles();
    if (probing && e.depth_V() <= e.play_V) return;
    if (e.kind == ExcursionKind::dropout && onSignal()) wear.dropout(e.held_V);
    if (drive) drive->excursionEnded();
    // One found late, in a movement that never came, belongs before those after it.
    auto at = excursions.end();
    while (at != excursions.begin() && (at - 1)->from > e.from) --at;
    excursions.insert(at, std::move(e));
}

void Examination::Parts::excursionWithdrawn() {
    if (drive) drive->excursionWithdrawn();
}

void Examination::Parts::jumped(const LevelJump& jump) {
    LevelJump j = jump;
    const Context& at = timeline.at(j.at - aperture);
    j.step = at.step;
    j.poseIndex = at.poseIndex;
    jumps.push_back(j);
    lastJump = last;
    hasJumped = true;
    if (drive && onSignal()) drive->levelChanged(j.from_V, j.to_V);
}

void Examination::Parts::travelled(Time from, Time to) {
    if (to <= from) return;
    if (!travels.empty() && travels.back().to >= from)
        travels.back().to = std::max(travels.back().to, to);
    else
        travels.push_back({from, to});
}

void Examination::Parts::travelWithdrawn(Time from) {
    while (!travels.empty() && travels.back().from >= from) travels.pop_back();
}

void Examination::Parts::held(const Reading* from, std::size_t count, bool settledAnew) {
    const double held_V = tracker.held_V();
    plateaus.held(from, count, settledAnew, tracker.level().noise_V(), tracker.level().threshold_V());
    timeline.countHeld(from, count, held_V, kLeansShare * tracker.threshold_V());
    if (!onSignal()) return;
    wear.held(from, count, held_V);
    if (drive) drive->held(from, count);
}

} // namespace stillwire
