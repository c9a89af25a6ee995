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
constexpr int kReadingsOfASpike = 2;             // of a sweep
constexpr int kPosesHeld = 12;                   // with the connector held, where they can still be asked for
constexpr int kPosesOfLeads = 10;                // of both together
constexpr int kPosesOfAWire = 8;                 // of a step that follows a dropout, at least
constexpr double kSureOfAConnector = 0.99;       // where it can still be asked for
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

// A lead check that failed speaks for itself; what was pushed before it may have moved the leads.
bool counts(Time at, std::optional<Step> step, const CoverageEvidence& evidence) {
    const bool pushed = !step || (traits(*step).wiggles() && *step != Step::leadCheck);
    return !pushed || at >= evidence.countsFrom;
}

// The pedal is moved to a place, and held or let go there.
bool movesIn(Step step) {
    return traits(step).visits() || traits(step).motion == ExpectedMotion::sweep || step == Step::warmRepeat;
}

bool lookedAt(const Pose& pose, const CoverageEvidence& evidence) {
    return pose.readings >= kReadingsInAPose && !evidence.timeline->undone(pose.stepVisit) &&
           counts(pose.from, pose.step, evidence) && !overlapsBlind(pose, evidence);
}

const Pose& poseAt(const CoverageEvidence& evidence, int index) {
    return evidence.timeline->poses()[static_cast<std::size_t>(index)];
}

// Belongs this pose (or, outside poses, this step) to what was shaken?
bool belongs(const CoverageEvidence& evidence, Wiggled shaken, std::optional<Step> step, int pose) {
    if (step && traits(*step).wire != Wire::signal && traits(*step).wiggles()) return false;
    if (pose >= 0) return poseAt(evidence, pose).shaken == shaken;
    return step && traits(*step).wiggled == shaken;
}

// The name of the section, as the capture names it or, where it names none, as the pose does.
std::string sectionOf(const PosePlace& where, const CoverageEvidence& evidence) {
    for (std::size_t i = 0; i < evidence.sections->size(); ++i)
        if (where.isSection((*evidence.sections)[i], i + 1)) return (*evidence.sections)[i];
    return evidence.sections->empty() ? where.area : std::string();
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

ShakenTally tally(const CoverageEvidence& evidence, Wiggled shaken) {
    return tallyWhere(evidence,
                      [&](std::optional<Step> step, int pose) { return belongs(evidence, shaken, step, pose); });
}

namespace {

ShakenTally tallySection(const CoverageEvidence& evidence, const std::string& name) {
    return tallyWhere(evidence, [&](std::optional<Step> step, int pose) {
        if (!belongs(evidence, Wiggled::harness, step, pose)) return false;
        return (pose < 0 ? std::string() : sectionOf(poseAt(evidence, pose).where, evidence)) == name;
    });
}

} // namespace

WorstSection worstSection(const CoverageEvidence& evidence) {
    std::set<std::string> names;
    for (const Pose& pose : evidence.timeline->poses())
        if (pose.shaken == Wiggled::harness) names.insert(sectionOf(pose.where, evidence));
    WorstSection worst{{}, std::max(1, static_cast<int>(names.size()))};
    names.insert(std::string()); // between the poses, too
    const auto rate = [](const ShakenTally& t) { return static_cast<double>(t.suspectPoses) / std::max(1, t.poses); };
    for (const std::string& name : names) {
        const ShakenTally one = tallySection(evidence, name);
        const bool worse = std::pair(one.decides, rate(one)) > std::pair(worst.tally.decides, rate(worst.tally));
        if (worse || worst.tally.poses == 0) worst.tally = one;
    }
    return worst;
}

namespace {

ShakenTally tallyLeadCheck(const CoverageEvidence& evidence, int visit) {
    return tallyWhere(evidence, [&](std::optional<Step> step, int pose) {
        return step == Step::leadCheck && pose >= 0 && poseAt(evidence, pose).stepVisit == visit;
    });
}

} // namespace

LeadChecks tallyLeads(const CoverageEvidence& evidence) {
    LeadChecks checks;
    const std::vector<StepVisit>& visits = evidence.timeline->stepVisits();
    for (std::size_t i = 0; i < visits.size(); ++i) {
        if (visits[i].step != Step::leadCheck || visits[i].undone) continue;
        checks.newest = tallyLeadCheck(evidence, static_cast<int>(i));
        if (checks.newest.any) checks.failedUntil = visits[i].closed ? visits[i].to : evidence.end;
    }
    return checks;
}

ShakenTally tallyStep(const CoverageEvidence& evidence, Step wanted) {
    return tallyWhere(evidence, [&](std::optional<Step> step, int) { return step == wanted; });
}

namespace {

// Of the dropouts under a moved or held pedal, those that no foot makes: off the travel, and spikes of a sweep at one
// place, again and again. A foot that goes back for a moment, or gives way, stays on the travel.
int tellingMoves(const CoverageEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const auto byLow = [](const Position& a, const Position& b) { return a.window.min_V < b.window.min_V; };
    const auto byHigh = [](const Position& a, const Position& b) { return a.window.max_V < b.window.max_V; };
    const double low_V = std::min_element(sheet.positions.begin(), sheet.positions.end(), byLow)->window.min_V;
    const double high_V = std::max_element(sheet.positions.begin(), sheet.positions.end(), byHigh)->window.max_V;
    const auto offTravel = [&](double volts_V) {
        return volts_V < low_V - sheet.play_V || volts_V > high_V + sheet.play_V;
    };
    int off = 0;
    std::vector<double> spikes; // where they left the line
    for (const LevelJump& jump : *evidence.jumps)
        if (jump.poseIndex < 0 && jump.step && movesIn(*jump.step) && !jump.withReference && offTravel(jump.to_V))
            ++off;
    for (const Excursion& e : *evidence.excursions) {
        if (e.poseIndex >= 0 || !e.step || !movesIn(*e.step) || !votes(e, *evidence.timeline)) continue;
        if (offTravel(e.extreme_V))
            ++off;
        else if (*e.step == Step::sweep && e.readings <= kReadingsOfASpike)
            spikes.push_back(e.held_V);
    }
    int most = 0;
    for (const double at_V : spikes)
        most = std::max(most, static_cast<int>(std::count_if(spikes.begin(), spikes.end(), [&](double other_V) {
                            return std::abs(other_V - at_V) <= kSamePlaceShare * sheet.span_V() / 2;
                        })));
    return off + (most >= 2 ? most : 0);
}

} // namespace

ShakenTally tallyMoving(const CoverageEvidence& evidence) {
    ShakenTally tally =
        tallyWhere(evidence, [](std::optional<Step> step, int pose) { return pose < 0 && step && movesIn(*step); });
    tally.decides = tellingMoves(evidence) >= 2;
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

namespace {

// So many poses of a step show the fault it is for. What follows the shaft asks for as many as show what the shaft
// showed, at its own rate.
int posesWanted(const CoverageEvidence& evidence, Step step, double sure = 0.95) {
    const int all = trialsToSeeOne(evidence.sheet->referenceFault.share);
    if (step == Step::leadCheck) return kPosesOfLeads;
    if (traits(step).need != Need::offered) return all;
    const ShakenTally shaft = tallyStep(evidence, Step::wiggleShaft); // as it was before; what is warm later is not
    if (!shaft.any) return kPosesOfAWire;
    const double rate = static_cast<double>(shaft.faultPoses) / std::max(shaft.faultPoses, shaft.poses);
    return std::clamp(rate < 1 ? trialsToSeeOne(rate, sure) : 1, kPosesOfAWire, all);
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
        if (jump.step == step && !jump.withReference &&
            (jump.poseIndex < 0 || meant(poseAt(evidence, jump.poseIndex))))
            ++cover.jumps;

    double level_V = evidence.sheet->rest().window.middle_V(), threshold_V = 0;
    heldIn(evidence, step, level_V, threshold_V);
    const ReferenceFault& fault = evidence.sheet->referenceFault;
    // The ground wire has no level to fall from: opened, it rises.
    const double most_V = step == Step::wiggleGround ? fault.depth_V : fault.levelShare * std::abs(level_V);
    const double depth_V = std::min(fault.depth_V, most_V);
    threshold_V =
        poseThreshold_V(threshold_V, evidence.sheet->play_V, evidence.meter->rangeFor(level_V).resolution_V);
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
void addSections(const CoverageEvidence& evidence, int wantedUnnamed, std::vector<StepCoverage>& steps) {
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
        askAgain(one, tallySection(evidence, section), each);
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

StepCoverage coverStep(const CoverageEvidence& evidence, Step step, std::optional<Wiggled> shaken) {
    return cover(evidence, step, posesWanted(evidence, step),
                 [&](const Pose& pose) { return !shaken || pose.shaken == *shaken; });
}

std::vector<StepCoverage> coverSteps(const CoverageEvidence& evidence) {
    std::vector<StepCoverage> steps;
    for (const StepTraits& t : kStepTable) {
        if (!t.requiredWiggle() && (!t.wiggles() || !evidence.timeline->did(t.step))) continue;
        const int wanted = posesWanted(evidence, t.step);
        StepCoverage& step = steps.emplace_back(cover(evidence, t.step, wanted, [](const Pose&) { return true; }));
        if (t.step == Step::connectorHeld && step.posesFor95)
            step.again = std::max(0, std::max(kPosesHeld, posesWanted(evidence, t.step, kSureOfAConnector)) -
                                         step.poses - *step.posesFor95);
        if (t.step == Step::wiggleShaft) askAgain(step, tally(evidence, Wiggled::shaft), wanted);
        if (t.step != Step::wiggleHarness) continue;
        if (evidence.sections->empty())
            askAgain(step, worstSection(evidence).tally, wanted);
        else
            addSections(evidence, wanted, steps);
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
