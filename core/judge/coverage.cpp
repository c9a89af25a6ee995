// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/coverage.hpp"

#include "core/judge/trails.hpp"
#include "core/judge/visibility.hpp"
#include "core/stats/exact.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

namespace stillwire {

namespace {

constexpr int kPosesHeld = 12;      // with the connector held, where they can still be asked for
constexpr int kPosesOfAWire = 8;    // of a step that follows a dropout, at least
constexpr double kByChance = 0.005; // own rule, no source

// So many poses of a step show the fault it is for. What follows the shaft asks for as many as show what the shaft
// showed, at its own rate.
int posesWanted(const CoverageEvidence& evidence, Step step, const Tallies& tallies) {
    const int all = trialsToSeeOne(evidence.sheet->referenceFault.share);
    if (step == Step::leadCheck) return 2 * kPosesOfALead;
    if (traits(step).need != Need::offered) return all;
    const ShakenTally& shaft = tallies.shaftFirst; // as it was before; what is warm later is not
    if (!shaft.any) return kPosesOfAWire;
    const double rate = static_cast<double>(shaft.faultPoses) / std::max(shaft.faultPoses, shaft.poses);
    return std::clamp(rate < 1 ? trialsToSeeOne(rate) : 1, kPosesOfAWire, all);
}

// With the connector held, one dropout says that it is not the connector. None is asked for again until it could not
// well be chance, by the exact test: the shaft's rate is known from a few dropouts only.
void wantHeld(const CoverageEvidence& evidence, const Tallies& tallies, StepCoverage& held) {
    if (!held.posesFor95) return;
    const int most = trialsToSeeOne(evidence.sheet->referenceFault.share);
    const ShakenTally& shaft = tallies.shaftFirst;
    const int pushed = std::max({1, shaft.faultPoses, shaft.poses});
    if (tallies.held.any) {
        held.posesFor95 = 0;
        return;
    }
    int sure = std::max(kPosesHeld, held.poses + *held.posesFor95);
    while (sure < most && greaterRateTest(shaft.faultPoses, pushed, 0, sure) >= kByChance) ++sure;
    held.again = std::max(0, sure - held.poses - *held.posesFor95);
}

using Meant = std::function<bool(const Pose&)>;

StepCoverage cover(const CoverageEvidence& evidence, Step step, int wanted, const Meant& meant) {
    StepCoverage cover;
    cover.step = step;
    const std::vector<Pose>& poses = evidence.timeline->poses();
    std::set<int> counted;
    for (std::size_t i = 0; i < poses.size(); ++i) {
        if (poses[i].step != step || !meant(poses[i])) continue;
        if (lookedAt(poses[i], evidence))
            counted.insert(static_cast<int>(i));
        else if (poses[i].closed && !evidence.timeline->undone(poses[i].stepVisit) &&
                 counts(poses[i].from, step, evidence))
            ++(setAsideIn(poses[i], evidence) ? cover.asidePoses : cover.blindPoses);
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
        if (jump.step == step && !jump.withReference &&
            (jump.poseIndex < 0 || meant(poseAt(evidence, jump.poseIndex))))
            ++cover.jumps;

    const HeldLevel held = heldIn(evidence, step);
    const ReferenceFault& fault = evidence.sheet->referenceFault;
    // The ground wire has no level to fall from: opened, it rises.
    const double most_V = step == Step::wiggleGround ? fault.depth_V : fault.levelShare * std::abs(held.level_V);
    const double depth_V = std::min(fault.depth_V, most_V);
    const double threshold_V = poseThreshold_V(held.threshold_V, evidence.sheet->play_V,
                                               evidence.meter->rangeFor(held.level_V).resolution_V);
    cover.shortestVisible_s = shortestVisible_s({evidence.interval_s, evidence.aperture_s, threshold_V}, depth_V);
    if (cover.shortestVisible_s) cover.posesFor95 = std::max(0, wanted - cover.poses);
    int hidden = 0;
    for (const int pose : hiddenBehind(evidence, dropout, kReadingsInAPose))
        if (counted.count(pose) > 0 && faulty.count(pose) == 0) ++hidden;
    if (cover.poses > 0) cover.rateUpper95 = rateUpperBound(cover.dropouts, cover.poses - hidden);
    return cover;
}

void askAgain(StepCoverage& cover, const ShakenTally& tally, int wanted) {
    if (!tally.any || tally.decides || !cover.posesFor95) return;
    cover.again = std::max(0, wanted - tally.cleanAfter - *cover.posesFor95);
}

// A fault of the harness lies in one section: each is looked at by itself. Poses that name none are of the whole.
void addSections(const CoverageEvidence& evidence, const Tallies& tallies, int wantedUnnamed,
                 std::vector<StepCoverage>& steps) {
    const auto of = [&](const std::string& section) {
        return [&evidence, section](const Pose& pose) { return sectionOf(pose.where, evidence) == section; };
    };
    const int each = trialsToSeeOne(evidence.sheet->referenceFault.sectionShare);
    const std::size_t whole = steps.size() - 1;
    if (!steps[whole].posesFor95) return;
    int wanted = 0;
    std::optional<double> worst = 0.0; // none where a section has none
    for (const std::string& section : *evidence.sections) {
        StepCoverage one = cover(evidence, Step::wiggleHarness, each, of(section));
        one.section = section;
        askAgain(one, tallies.sections.at(section), each);
        steps[whole].again += one.again;
        wanted += one.posesFor95.value_or(0);
        worst = worst && one.rateUpper95 ? std::max(worst, one.rateUpper95) : std::nullopt;
        steps.push_back(std::move(one));
    }
    const StepCoverage unnamed = cover(evidence, Step::wiggleHarness, wantedUnnamed, of(""));
    if (unnamed.posesFor95 == 0) return; // without naming one it has seen enough
    steps[whole].posesFor95 = std::min(wanted, unnamed.posesFor95.value_or(wanted));
    steps[whole].rateUpper95 = worst;
}

} // namespace

StepCoverage coverStep(const CoverageEvidence& evidence, Step step, Wiggled shaken) {
    return cover(evidence, step, 0, [&](const Pose& pose) { return pose.shaken == shaken; });
}

std::vector<StepCoverage> coverSteps(const CoverageEvidence& evidence, const Tallies& tallies) {
    std::vector<StepCoverage> steps;
    for (const StepTraits& t : kStepTable) {
        if (!t.requiredWiggle() && (!t.wiggles() || !evidence.timeline->did(t.step))) continue;
        const int wanted = posesWanted(evidence, t.step, tallies);
        StepCoverage& step = steps.emplace_back(cover(evidence, t.step, wanted, [](const Pose&) { return true; }));
        if (t.step == Step::connectorHeld) wantHeld(evidence, tallies, step);
        if (t.step == Step::wiggleShaft) askAgain(step, tallies.shaft, wanted);
        if (t.step == Step::wiggleReference) askAgain(step, tallies.referenceWire, wanted);
        if (t.step == Step::wiggleGround) askAgain(step, tallies.groundWire, wanted);
        if (t.step != Step::wiggleHarness) continue;
        if (evidence.sections->empty())
            askAgain(step, tallies.section, wanted);
        else
            addSections(evidence, tallies, wanted, steps);
    }
    return steps;
}

StepCoverage coverAll(const std::vector<StepCoverage>& steps) {
    StepCoverage all;
    bool any = false;
    for (const StepCoverage& step : steps) {
        if (!traits(step.step).requiredWiggle() || !step.section.empty()) continue;
        if (!any) {
            all = step;
            any = true;
            continue;
        }
        if (step.poses < all.poses) all.step = step.step;
        all.poses += step.poses;
        all.blindPoses += step.blindPoses;
        all.asidePoses += step.asidePoses;
        all.dropouts += step.dropouts;
        all.jumps += step.jumps;
        all.posesFor95 =
            all.posesFor95 && step.posesFor95 ? std::optional(*all.posesFor95 + *step.posesFor95) : std::nullopt;
        // A place not looked at at all has no bound, and so has the whole.
        all.rateUpper95 =
            all.rateUpper95 && step.rateUpper95 ? std::max(all.rateUpper95, step.rateUpper95) : std::nullopt;
        all.shortestVisible_s = std::max(all.shortestVisible_s, step.shortestVisible_s);
    }
    return all;
}

} // namespace stillwire
