// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/pose_evidence.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kRangesMeet = 0.9; // of its full scale a range is left downwards. From memory

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

} // namespace

const Pose& poseAt(const CoverageEvidence& evidence, int index) {
    return evidence.timeline->poses()[static_cast<std::size_t>(index)];
}

HeldLevel heldIn(const CoverageEvidence& evidence, Step step) {
    std::vector<const Plateau*> all, looked;
    for (const Plateau& plateau : *evidence.plateaus) {
        if (plateau.place.step != step) continue;
        all.push_back(&plateau);
        const int pose = plateau.place.poseIndex;
        if (pose >= 0 && lookedAt(poseAt(evidence, pose), evidence)) looked.push_back(&plateau);
    }
    std::vector<const Plateau*>& held = looked.empty() ? all : looked;
    if (held.empty()) return {evidence.sheet->rest().window.middle_V(), evidence.threshold_V};
    std::sort(held.begin(), held.end(), [](const Plateau* x, const Plateau* y) { return x->level_V < y->level_V; });
    std::int64_t readings = 0, passed = 0;
    for (const Plateau* plateau : held) readings += plateau->readings;
    const auto middle = std::find_if(held.begin(), held.end(), [&](const Plateau* plateau) {
        passed += plateau->readings;
        return 2 * passed >= readings;
    });
    return {(*middle)->level_V, (*middle)->threshold_V};
}

bool wentOffScale(const Pose& pose, const CoverageEvidence& evidence) {
    if (evidence.timeline->undone(pose.stepVisit) || !pose.step || !overlapsBlind(pose, evidence, true)) return false;
    if (setAsideIn(pose, evidence)) return false;
    return !nearARangeLimit(evidence, heldIn(evidence, *pose.step).level_V);
}

bool counts(Time at, std::optional<Step> step, const CoverageEvidence& evidence) {
    const bool pushed = !step || (traits(*step).wiggles() && *step != Step::leadCheck);
    return !pushed || at >= evidence.countsFrom;
}

bool setAsideIn(const Pose& pose, const CoverageEvidence& evidence) {
    const Time to = pose.closed ? pose.to : evidence.end;
    return std::any_of(evidence.aside->begin(), evidence.aside->end(), [&](const Aside& aside) {
        return aside.likely != Likely::lean && aside.from < to && aside.to >= pose.from;
    });
}

bool lookedAt(const Pose& pose, const CoverageEvidence& evidence) {
    return pose.readings >= kReadingsInAPose && !evidence.timeline->undone(pose.stepVisit) &&
           counts(pose.from, pose.step, evidence) && !overlapsBlind(pose, evidence) && !setAsideIn(pose, evidence);
}

bool belongs(const CoverageEvidence& evidence, Wiggled shaken, std::optional<Step> step, int pose) {
    if (step && traits(*step).wire != Wire::signal && traits(*step).wiggles()) return false;
    if (pose >= 0) return poseAt(evidence, pose).shaken == shaken;
    return step && traits(*step).wiggled == shaken;
}

std::string sectionOf(const PosePlace& where, const CoverageEvidence& evidence) {
    for (std::size_t i = 0; i < evidence.sections->size(); ++i)
        if (where.isSection((*evidence.sections)[i], i + 1)) return (*evidence.sections)[i];
    return evidence.sections->empty() ? where.area : std::string();
}

} // namespace stillwire
