// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/coverage.hpp"

#include "core/judge/trails.hpp"
#include "core/judge/visibility.hpp"
#include "core/stats/exact.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>

namespace stillwire {

namespace {
constexpr int kReadingsInAPose = 2;              // fewer show nothing
constexpr double kRangesMeet = 0.9;              // of its full scale a range is left downwards. From memory
constexpr double kSamePlaceShare = 0.1;          // of the sheet's span
constexpr Time kApart = std::chrono::seconds(1); // dropouts outside poses count as two when further apart
constexpr double kOneEvent = 1.5;                // intervals: what goes on from one pose into the next

bool overlapsBlind(const Pose& pose, const CoverageEvidence& evidence, bool offScaleOnly = false) {
    const Time to = pose.closed ? pose.to : evidence.end;
    return std::any_of(evidence.blind->begin(), evidence.blind->end(), [&](const BlindSpan& span) {
        const bool offScale = span.cause == BlindCause::autorange || span.cause == BlindCause::overload;
        return span.from < to && span.to > pose.from && (offScale || !offScaleOnly);
    });
}

// May this level leave its range by the hand's play alone?
bool nearARangeLimit(const CoverageEvidence& evidence, double level_V) {
    const double play_V = evidence.sheet->play_V;
    return std::any_of(evidence.meter->ranges.begin(), evidence.meter->ranges.end(), [&](const MeterRange& range) {
        return std::abs(level_V) >= kRangesMeet * range.fullScale_V - play_V &&
               std::abs(level_V) <= range.fullScale_V + play_V;
    });
}

// Level and threshold of the step, for what could be seen in it.
void heldIn(const CoverageEvidence& evidence, Step step, double& level_V, double& threshold_V) {
    std::int64_t most = 0;
    threshold_V = evidence.threshold_V;
    for (const Plateau& plateau : *evidence.plateaus) {
        if (plateau.place.step != step || plateau.readings <= most) continue;
        most = plateau.readings;
        level_V = plateau.level_V;
        threshold_V = plateau.threshold_V;
    }
}

// Off the scale in a pose where the level should have stood still, and could not have left its range by play.
bool wentOffScale(const Pose& pose, const CoverageEvidence& evidence) {
    if (evidence.timeline->undone(pose.stepVisit) || !pose.step || !overlapsBlind(pose, evidence, true)) return false;
    double level_V = evidence.sheet->rest().window.middle_V(), threshold_V = 0;
    heldIn(evidence, *pose.step, level_V, threshold_V);
    return !nearARangeLimit(evidence, level_V);
}

bool lookedAt(const Pose& pose, const CoverageEvidence& evidence) {
    return pose.readings >= kReadingsInAPose && !evidence.timeline->undone(pose.stepVisit) &&
           !overlapsBlind(pose, evidence);
}

// Belongs this pose (or, outside poses, this step) to what was shaken?
bool belongs(const CoverageEvidence& evidence, Shaken shaken, std::optional<Step> step, int poseIndex) {
    if (step && traits(*step).wire != Wire::signal && traits(*step).wiggles()) return false;
    if (poseIndex >= 0) {
        const Pose& pose = evidence.timeline->poses()[static_cast<std::size_t>(poseIndex)];
        return pose.harness == (shaken == Shaken::harness);
    }
    return step && traits(*step).wiggled == (shaken == Shaken::shaft ? Wiggled::shaft : Wiggled::harness);
}

using Belongs = std::function<bool(std::optional<Step>, int pose)>;

ShakenTally tallyWhere(const CoverageEvidence& evidence, const Belongs& mine) {
    ShakenTally tally;
    const std::vector<Pose>& poses = evidence.timeline->poses();
    std::set<int> faulty, offScale;
    for (std::size_t i = 0; i < poses.size(); ++i) {
        if (!mine(poses[i].step, static_cast<int>(i))) continue;
        if (lookedAt(poses[i], evidence)) ++tally.poses;
        if (wentOffScale(poses[i], evidence)) offScale.insert(static_cast<int>(i));
    }

    int loose = 0; // votes outside poses
    Time newest{-10000000};
    for (const Excursion& e : *evidence.excursions) {
        if (!mine(e.step, e.poseIndex) || !votes(e, *evidence.timeline)) continue;
        tally.heldLow_V = tally.any ? std::min(tally.heldLow_V, e.held_V) : e.held_V;
        tally.heldHigh_V = tally.any ? std::max(tally.heldHigh_V, e.held_V) : e.held_V;
        tally.any = true;
        const Time apart = e.poseIndex < 0 ? kApart : fromSeconds(kOneEvent * evidence.interval_s);
        const bool anew = e.from - newest > apart;
        newest = std::max(newest, e.to);
        if (anew && e.poseIndex >= 0) faulty.insert(e.poseIndex);
        if (anew && e.poseIndex < 0) ++loose;
        if (e.depth_V() > tally.deepest_V) {
            tally.deepest_V = e.depth_V();
            tally.held_V = e.held_V;
            tally.extreme_V = e.extreme_V;
        }
    }
    for (const LevelJump& jump : *evidence.jumps) {
        if (jump.withReference || !mine(jump.step, jump.poseIndex)) continue;
        tally.jumped = true;
        if (jump.poseIndex >= 0)
            faulty.insert(jump.poseIndex);
        else
            ++loose;
        newest = std::max(newest, jump.at);
        if (std::abs(jump.to_V - jump.from_V) > tally.deepest_V) {
            tally.deepest_V = std::abs(jump.to_V - jump.from_V);
            tally.held_V = jump.from_V;
            tally.extreme_V = jump.to_V;
        }
    }
    for (const int pose : renewedIn(evidence, [&](const Excursion& e) { return votes(e, *evidence.timeline); }))
        if (mine(poses[static_cast<std::size_t>(pose)].step, pose)) faulty.insert(pose);
    tally.dropped = tally.any;
    tally.any = tally.any || tally.jumped;
    tally.faultPoses = static_cast<int>(faulty.size()) + loose;
    tally.offScale = static_cast<int>(offScale.size());
    for (std::size_t i = 0; i < poses.size(); ++i)
        if (poses[i].from > newest && mine(poses[i].step, static_cast<int>(i)) && lookedAt(poses[i], evidence))
            ++tally.cleanAfter;
    tally.newest = newest;
    offScale.insert(faulty.begin(), faulty.end());
    tally.suspectPoses = static_cast<int>(offScale.size()) + loose;
    tally.decides = tally.any && tally.suspectPoses >= 2;
    // A dropout that a hand left behind may show in the first reading of the next section.
    std::map<std::string, int> areas;
    for (const int pose : faulty) {
        const PosePlace& at = poses[static_cast<std::size_t>(pose)].where;
        ++areas[at.area.empty() ? at.way : at.area];
    }
    for (const auto& [area, count] : areas)
        if (4 * count >= 3 * static_cast<int>(faulty.size())) tally.area = {area, {}};
    return tally;
}

} // namespace

bool votes(const Excursion& excursion, const Timeline& timeline) {
    if (excursion.withReference) return false;
    if (excursion.kind != ExcursionKind::dropout || excursion.depth_V() <= excursion.play_V) return false;
    if (excursion.poseIndex >= 0) {
        const Pose& pose = timeline.poses()[static_cast<std::size_t>(excursion.poseIndex)];
        return !timeline.undone(pose.stepVisit);
    }
    return true;
}

ShakenTally tally(const CoverageEvidence& evidence, Shaken shaken) {
    return tallyWhere(evidence,
                      [&](std::optional<Step> step, int pose) { return belongs(evidence, shaken, step, pose); });
}

ShakenTally tallyStep(const CoverageEvidence& evidence, Step wanted) {
    return tallyWhere(evidence, [&](std::optional<Step> step, int) { return step == wanted; });
}

ShakenTally tallyMoving(const CoverageEvidence& evidence) {
    ShakenTally tally = tallyWhere(evidence, [](std::optional<Step> step, int pose) {
        const bool moves = step && (traits(*step).visits() || traits(*step).motion == ExpectedMotion::sweep);
        return pose < 0 && (moves || step == Step::warmRepeat);
    });
    // A hand that goes back for a moment looks like a spike to a slow meter. A worn spot spikes at its own place.
    const bool samePlace =
        tally.faultPoses >= 2 && tally.heldHigh_V - tally.heldLow_V <= kSamePlaceShare * evidence.sheet->span_V();
    tally.decides = samePlace || tally.faultPoses > 2;
    tally.cleanAfter = 0;
    Time counted{-1};
    for (const Plateau& stay : *evidence.plateaus) {
        const Context& at = stay.place;
        if (at.position < 0 || at.poseIndex >= 0 || at.wire != Wire::signal || stay.readings < kReadingsInAPose)
            continue;
        if (at.from <= tally.newest || at.from == counted) continue;
        counted = at.from;
        ++tally.cleanAfter;
    }
    return tally;
}

ShakenTally tallyUntouched(const CoverageEvidence& evidence) {
    return tallyWhere(evidence, [](std::optional<Step> step, int) { return step == Step::coldStart; });
}

StepCoverage coverStep(const CoverageEvidence& evidence, Step step, std::optional<Shaken> shaken) {
    StepCoverage cover;
    cover.step = step;
    const std::vector<Pose>& poses = evidence.timeline->poses();
    std::set<int> counted;
    for (std::size_t i = 0; i < poses.size(); ++i) {
        if (poses[i].step != step || (shaken && poses[i].harness != (shaken == Shaken::harness))) continue;
        if (lookedAt(poses[i], evidence))
            counted.insert(static_cast<int>(i));
        else if (poses[i].closed && !evidence.timeline->undone(poses[i].stepVisit))
            ++cover.blindPoses;
    }
    cover.poses = static_cast<int>(counted.size());
    std::set<int> faulty;
    const auto dropout = [](const Excursion& e) { return e.kind == ExcursionKind::dropout && !e.withReference; };
    for (const Excursion& e : *evidence.excursions)
        if (dropout(e) && counted.count(e.poseIndex) > 0) faulty.insert(e.poseIndex);
    for (const int pose : renewedIn(evidence, dropout))
        if (counted.count(pose) > 0) faulty.insert(pose);
    cover.dropouts = static_cast<int>(faulty.size());
    for (const LevelJump& jump : *evidence.jumps)
        if (jump.step == step && !jump.withReference) ++cover.jumps;

    double level_V = evidence.sheet->rest().window.middle_V(), threshold_V = 0;
    heldIn(evidence, step, level_V, threshold_V);
    const ReferenceFault& fault = evidence.sheet->referenceFault;
    // The ground wire has no level to fall from: opened, it rises.
    const double most_V = step == Step::wiggleGround ? fault.depth_V : fault.levelShare * std::abs(level_V);
    const double depth_V = std::min(fault.depth_V, most_V);
    threshold_V =
        poseThreshold_V(threshold_V, evidence.sheet->play_V, evidence.meter->rangeFor(level_V).resolution_V);
    cover.shortestVisible_s = shortestVisible_s({evidence.interval_s, evidence.aperture_s, threshold_V}, depth_V);
    if (cover.shortestVisible_s) cover.posesFor95 = std::max(0, trialsToSeeOne(fault.share) - cover.poses);
    int hidden = 0;
    for (const int pose : hiddenBehind(evidence, dropout, kReadingsInAPose))
        if (counted.count(pose) > 0 && faulty.count(pose) == 0) ++hidden;
    if (cover.poses > 0) cover.rateUpper95 = rateUpperBound(cover.dropouts, cover.poses - hidden);
    return cover;
}

std::vector<StepCoverage> coverSteps(const CoverageEvidence& evidence) {
    std::vector<StepCoverage> steps;
    for (const StepTraits& t : kStepTable)
        if (t.requiredWiggle() || (t.wiggles() && evidence.timeline->did(t.step)))
            steps.push_back(coverStep(evidence, t.step));
    return steps;
}

StepCoverage worseCovered(const std::vector<StepCoverage>& steps) {
    StepCoverage worse;
    bool any = false;
    for (const StepCoverage& step : steps) {
        if (!traits(step.step).requiredWiggle()) continue;
        if (!any || step.poses < worse.poses) worse = step;
        any = true;
    }
    return worse;
}

} // namespace stillwire
