// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/tally.hpp"

#include "core/judge/trails.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace stillwire {

namespace {
constexpr Time kApart = std::chrono::seconds(1); // dropouts outside poses count as two when further apart
constexpr double kOneEvent = 1.5;                // intervals: what goes on from one pose into the next
} // namespace

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
        if (!mine(e.step, e.poseIndex) || !counts(e.from, e.step, evidence) || !votes(e, *evidence.timeline))
            continue;
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
        if (jump.withReference || !mine(jump.step, jump.poseIndex) || !counts(jump.at, jump.step, evidence)) continue;
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
        if (mine(poseAt(evidence, pose).step, pose) &&
            counts(poseAt(evidence, pose).from, poseAt(evidence, pose).step, evidence))
            faulty.insert(pose);
    // Where the level left its range on its way to a dropout or back, it is the same event.
    std::erase_if(offScale, [&](int pose) {
        return faulty.count(pose) == 0 && (faulty.count(pose - 1) > 0 || faulty.count(pose + 1) > 0);
    });
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
        const PosePlace& at = poseAt(evidence, pose).where;
        ++areas[at.area.empty() ? at.way : at.area];
    }
    for (const auto& [area, count] : areas)
        if (4 * count >= 3 * static_cast<int>(faulty.size())) tally.area = {area, {}};
    return tally;
}

bool votes(const Excursion& excursion, const Timeline& timeline) {
    if (excursion.withReference) return false;
    if (excursion.kind != ExcursionKind::dropout || excursion.depth_V() <= excursion.play_V) return false;
    if (excursion.poseIndex >= 0) {
        const Pose& pose = timeline.poses()[static_cast<std::size_t>(excursion.poseIndex)];
        return !timeline.undone(pose.stepVisit);
    }
    return true;
}

LeadChecks tallyLeads(const CoverageEvidence& evidence) {
    LeadChecks checks;
    const std::vector<StepVisit>& visits = evidence.timeline->stepVisits();
    for (std::size_t i = 0; i < visits.size(); ++i) {
        if (visits[i].step != Step::leadCheck || visits[i].undone) continue;
        checks.newest = tallyWhere(evidence, [&](std::optional<Step> step, int pose) {
            return step == Step::leadCheck && pose >= 0 && poseAt(evidence, pose).stepVisit == static_cast<int>(i);
        });
        if (checks.newest.any) checks.failedUntil = visits[i].closed ? visits[i].to : evidence.end;
    }
    return checks;
}

namespace {

void tallySections(const CoverageEvidence& evidence, Tallies& all) {
    std::set<std::string> names;
    for (const Pose& pose : evidence.timeline->poses())
        if (pose.shaken == Wiggled::harness) names.insert(sectionOf(pose.where, evidence));
    all.shakenSections = std::max(1, static_cast<int>(names.size()));
    names.insert(std::string()); // between the poses, too
    names.insert(evidence.sections->begin(), evidence.sections->end());
    const auto rate = [](const ShakenTally& t) { return static_cast<double>(t.suspectPoses) / std::max(1, t.poses); };
    for (const std::string& name : names) {
        const ShakenTally one = tallyWhere(evidence, [&](std::optional<Step> step, int pose) {
            if (!belongs(evidence, Wiggled::harness, step, pose)) return false;
            return (pose < 0 ? std::string() : sectionOf(poseAt(evidence, pose).where, evidence)) == name;
        });
        const bool worse = std::pair(one.decides, rate(one)) > std::pair(all.section.decides, rate(all.section));
        if (worse || all.section.poses == 0) all.section = one;
        all.sections[name] = one;
    }
}

} // namespace

LeanTally tallyLeans(const CoverageEvidence& evidence) {
    LeanTally leans;
    for (const Pose& pose : evidence.timeline->poses())
        if (pose.armHeld && lookedAt(pose, evidence)) ++leans.heldPoses;
    for (const Excursion& e : *evidence.excursions) {
        if (e.likely != Likely::lean || e.poseIndex < 0) continue;
        const Pose& pose = poseAt(evidence, e.poseIndex);
        if (evidence.timeline->undone(pose.stepVisit)) continue;
        ++(pose.armHeld ? leans.held : leans.free);
        leans.from_V = e.held_V;
        leans.to_V = e.far_V;
    }
    return leans;
}

Tallies takeTallies(const CoverageEvidence& evidence, const LeadChecks& leads) {
    const auto shaken = [&](Wiggled what) {
        return tallyWhere(evidence,
                          [&](std::optional<Step> step, int pose) { return belongs(evidence, what, step, pose); });
    };
    const auto in = [&](Step wanted) {
        return tallyWhere(evidence, [&](std::optional<Step> step, int) { return step == wanted; });
    };
    Tallies all;
    all.shaft = shaken(Wiggled::shaft);
    all.shaftFirst = in(Step::wiggleShaft);
    all.harness = shaken(Wiggled::harness);
    tallySections(evidence, all);
    all.harness.decides = all.section.decides;
    all.held = in(Step::connectorHeld);
    all.leads = leads.newest;
    all.referenceWire = in(Step::wiggleReference);
    all.groundWire = in(Step::wiggleGround);
    all.referenceStill = in(Step::reference);
    all.groundStill = in(Step::ground);
    all.moving = tallyMoving(evidence);
    all.leans = tallyLeans(evidence);
    all.untouched = in(Step::coldStart);
    return all;
}

} // namespace stillwire
