// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/books.hpp"

#include <cmath>
#include <utility>

namespace stillwire {

namespace {
constexpr double kLeansShare = 0.4; // of the threshold: a pose that leans to one side
} // namespace

Books::Books(const Sheet& sheet, const MeterTraits& meter)
    : play_V(sheet.play_V), resolution_V(meter.rangeFor(sheet.nominal_V).resolution_V),
      aperture(fromSeconds(meter.longestAperture_s())), timeline(sheet), plateaus(resolution_V / std::sqrt(12.0)),
      wear(sheet) {
    if (sheet.drive) drive.emplace(*sheet.drive, sheet.nominal_V, meter.interval_s, meter.aperture_s);
}

void Books::held(const Reading* first, std::size_t count, int context, const Segment& level, bool anew) {
    const Context& place = timeline.context(context);
    if (anew) {
        plateaus.levelAnew(context);
        begunStirred = place.poseIndex >= 0;
    }
    renewals.back();
    timeline.countHeld(place.poseIndex, first, count, level.level_V, kLeansShare * level.threshold_V);
    if (onSignal(context)) {
        wear.held(first, count, level.level_V);
        if (drive) drive->held(first, count);
    }
    while (count > 0 && static_cast<int>(timeline.indexAt(first[count - 1].time)) != context) --count;
    if (count > 0) plateaus.held(first, count, context, place, level.noise_V, level.threshold_V);
}

void Books::away(const Reading& reading, int context, const Segment& level) {
    renewals.away(reading.time - aperture, reading.volts_V - level.level_V, level.threshold_V);
    if (!onSignal(context)) return;
    wear.moving(level.level_V);
    if (drive) drive->away(reading.time, reading.volts_V, level.level_V);
}

void Books::moving(const Reading& reading, int context) {
    renewals.back();
    if (!onSignal(context)) return;
    wear.moving(reading.volts_V);
    if (drive) drive->moving(reading.time, reading.volts_V);
}

Excursion Books::placed(Excursion e, bool shoulder) const {
    const Context& at = timeline.at(e.from - aperture);
    e.step = at.step;
    e.unmarked = !at.step;
    e.poseIndex = at.poseIndex;
    if (at.poseIndex >= 0) e.pose = timeline.poses()[static_cast<std::size_t>(at.poseIndex)].where;
    // A shift no deeper than the sheet's play (and a count, for readings are rounded) that holds through the pose is
    // the bushing, not the track. A level first found while the arm was held to one side may be off by as much
    // itself.
    e.play_V = (begunStirred ? 2 : 1) * play_V + resolution_V;
    const bool mayBePlay = at.poseIndex >= 0 || (at.step && traits(*at.step).requiredWiggle());
    if (mayBePlay && e.depth_V() <= e.play_V && (e.readings >= 2 || shoulder)) e.kind = ExcursionKind::play;
    return e;
}

void Books::excursion(const Excursion& excursion, bool shoulder) {
    if (timeline.at(excursion.from - aperture).motion == ExpectedMotion::free) return; // nothing is judged there
    Excursion e = placed(excursion, shoulder);
    // A probe tip on a supply wire shivers by as much.
    const bool probing = e.step && traits(*e.step).wire != Wire::signal && !traits(*e.step).wiggles();
    if (probing && e.depth_V() <= e.play_V) return;
    const bool signal = timeline.at(e.from - aperture).wire == Wire::signal;
    if (e.kind == ExcursionKind::dropout && signal) wear.dropout(e.held_V);
    if (drive) drive->excursionEnded();
    excursions.push_back(std::move(e));
}

void Books::moved(const Movement& m) {
    const Context& at = timeline.at(m.first - aperture);
    const bool jumped = m.unasked && std::abs(m.to_V - m.from_V) > (begunStirred ? 2 : 1) * play_V + resolution_V;
    const bool leapt = at.motion == ExpectedMotion::unmarked && m.leapt;
    if (jumped || leapt) {
        LevelJump jump{m.first, m.from_V, m.to_V, at.step, at.poseIndex};
        jump.leapt = m.leapt;
        jumps.push_back(jump);
    }
    if (jumped && drive && at.wire == Wire::signal) drive->levelChanged(m.from_V, m.to_V);
    if (m.unasked || m.to <= m.from) return;
    if (!travels.empty() && travels.back().to >= m.from)
        travels.back().to = std::max(travels.back().to, m.to);
    else
        travels.push_back({m.from, m.to});
}

} // namespace stillwire
