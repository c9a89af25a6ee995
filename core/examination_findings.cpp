// SPDX-License-Identifier: GPL-3.0-or-later
// The way out: everything so far, judged.
#include "core/analyse/aside.hpp"
#include "core/analyse/play.hpp"
#include "core/examination_parts.hpp"
#include "core/judge/adjustment.hpp"
#include "core/judge/cold_warm.hpp"
#include "core/judge/telling_stays.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kJump = 3;                   // readings that a jump is taken for
constexpr double kIntervalTolerance = 0.2; // described and seen may differ by this much

// Dropouts of the reference that a second meter saw: those the signal followed, and those out of the sheet's limits.
ReferenceTally tallyReference(const Findings& found, const Sheet& sheet) {
    ReferenceTally tally;
    for (const Excursion& e : found.referenceMoves) {
        const bool out = e.depth_V() > sheet.play_V &&
                         (e.extreme_V < sheet.reference.min_V || e.extreme_V > sheet.reference.max_V);
        if (!e.withReference && !out) continue;
        ++tally.drops;
        if (e.withReference) ++tally.withSignal;
        if (e.depth_V() < std::abs(tally.held_V - tally.extreme_V)) continue;
        tally.held_V = e.held_V;
        tally.extreme_V = e.extreme_V;
    }
    tally.decides = tally.drops >= 2; // one is none
    return tally;
}

} // namespace

// Which movements of the signal were the reference's, and which of those the signal followed.
void Examination::Parts::tellReference(Findings& found, const Books& b) const {
    found.referenceMoves = referenceWatch.movements();
    if (found.referenceMoves.empty()) return;
    const double apart_s = std::max(meter.interval_s, referenceMeter.interval_s) +
                           toSeconds(std::max(aperture, fromSeconds(referenceMeter.longestAperture_s())));
    const Time slack = fromSeconds(apart_s);
    const auto follows = [&](const SignalMove& signal) {
        bool any = false;
        for (Excursion& r : found.referenceMoves) {
            if (!wentWithReference(signal, {r}, slack)) continue;
            r.withReference = any = true;
        }
        return any;
    };
    for (Excursion& e : found.excursions)
        if (b.timeline.at(e.from - aperture).wire == Wire::signal && e.depth_V() > e.play_V)
            e.withReference = follows({e.from, e.to, e.held_V, e.extreme_V, e.readings});
    for (LevelJump& j : found.jumps)
        if (b.timeline.at(j.at - aperture).wire == Wire::signal)
            j.withReference = follows({j.at, j.at, j.from_V, j.to_V, kJump});
}

MeterFigures Examination::Parts::meterFigures() const {
    MeterFigures figures;
    const double seen_s = blind.interval_s();
    const bool differs = seen_s > 0 && std::abs(seen_s - meter.interval_s) > kIntervalTolerance * meter.interval_s;
    figures.interval_s = differs && readings > 30 ? seen_s : meter.interval_s;
    figures.aperture_s = meter.aperture_s;
    figures.resolution_V = resolutionOf(meter);
    // On the move nothing is held; the level is then the one that was left.
    const LevelEstimate level = search.any() ? search.now().level : LevelEstimate{};
    figures.held_V = state == WireState::moving || level.id() < 0 ? newest_V : level.level_V();
    figures.noise_V = level.id() < 0 ? search.expected_V(newest_V) : level.noise_V();
    figures.threshold_V = level.threshold_V(search.tuning());
    return figures;
}

Case Examination::Parts::caseOf(const Findings& found, const Levels& levels, const Tallies& tallies,
                                const Books& b) const {
    Case facts;
    static_cast<Tallies&>(facts) = tallies;
    facts.sheet = &setup.sheet;
    facts.timeline = &b.timeline;
    facts.findings = &found;
    facts.levels = &levels;
    for (const StepCoverage& step : found.steps) {
        if (step.step == Step::connectorHeld) facts.heldWanted = step.posesFor95.value_or(0);
        if (step.step == Step::wiggleHarness && step.section.empty()) facts.harnessEnough = step.posesFor95 == 0;
    }
    facts.secondMeter = tallyReference(found, setup.sheet);
    for (const Excursion& e : found.excursions)
        if (e.unmarked && votes(e, b.timeline)) ++facts.unmarkedDropouts;
    facts.blackOnSensorGround = setup.black == BlackLead::sensorGround;
    facts.probeAtSensor = setup.probe == ProbeSide::sensorSide && !probedAtController;
    facts.meterKnown = setup.meterKnown;
    facts.missing = missingForKeep(facts);
    return facts;
}

Findings Examination::Parts::findings() const {
    Books b = books;
    Classifier rest(classifier, b);
    search.tellRest(rest);
    if (const std::optional<Excursion> open = rest.open()) b.excursion(*open, false);
    const Timeline& timeline = b.timeline;
    Findings f;
    f.readings = readings;
    f.duration = first.count() < 0 ? Time(0) : last - first;
    f.meter = meterFigures();
    f.state = state;
    f.overVoltage = overVoltage;
    f.blind = blind.spans(last);
    f.referenceBlind = referenceBlind.spans(last);
    if (readings > 0 && blind.blindAt(last)) f.state = WireState::blind;
    f.assumed = setup.assumed;
    if (!setup.meterKnown) f.assumed.push_back({"meter accuracy: 1 %% + 5 counts", {}});
    f.excursions = b.excursions;
    tellPlay(f.excursions, {&timeline, f.meter.interval_s, resolutionOf(meter)});
    f.jumps = b.jumps;
    tellReference(f, b);

    const std::vector<Plateau> held = b.plateaus.all();
    f.aside = tellAside(f.excursions, f.jumps, {&setup.sheet, &timeline, &held, aperture, resolutionOf(meter)});
    f.plateaus = staysOf(held, setup.sheet);
    const std::vector<Plateau> reference = secondReference.all();
    const std::vector<Plateau> stays = tellingStays(settledStays(held, timeline), setup.sheet);
    const LevelEvidence levelEvidence{
        &setup.sheet, &meter, &timeline, &stays, setup.black == BlackLead::sensorGround, &reference, &referenceMeter};
    const Levels levels = weighLevels(levelEvidence);
    f.reference = levels.reference;
    f.ground = levels.ground;
    f.positions = levels.positions;
    addVisitsApart(f.positions, f.aside);
    if (referenceWatch.freshAt(last)) {
        f.ratio = LiveRatio{referenceWatch.newest()->volts_V, std::nullopt};
        Supply now = levels.supply;
        now.reference.level_V = f.ratio->reference_V;
        const bool any = now.reference.level_V - now.ground.level_V > 0.1 * setup.sheet.nominal_V;
        if (any && onSignal() && state != WireState::blind && state != WireState::silent)
            f.ratio->level_V = ratiometricLevel(setup.sheet, meter, now, {newest_V}).level_V;
    }
    if (!levels.supply.referenceMeasured)
        f.assumed.push_back({"reference: %1, the nominal, not measured", {volts(levels.supply.reference.level_V)}});
    if (!levels.supply.groundMeasured && setup.black != BlackLead::sensorGround)
        f.assumed.push_back(
            {"ground: %1, half of the allowed drop, not measured", {volts(levels.supply.ground.level_V)}});

    CoverageEvidence coverage{&setup.sheet,
                              &timeline,
                              &held,
                              &f.excursions,
                              &f.jumps,
                              &f.blind,
                              &f.aside,
                              f.meter.interval_s,
                              meter.aperture_s,
                              f.meter.threshold_V,
                              last,
                              &b.renewals.all(),
                              &meter,
                              &setup.sections};
    const LeadChecks leads = tallyLeads(coverage);
    coverage.countsFrom = leads.failedUntil.value_or(coverage.countsFrom);
    const Tallies tallies = takeTallies(coverage, leads);
    f.steps = coverSteps(coverage, tallies);
    f.wiggle = coverAll(f.steps);
    f.leadsFailed = tallies.leads.any;
    f.holdTheArm = tallies.leans.free > 0 && tallies.leans.heldPoses == 0;
    f.coldWarm = compareColdWarm(coverage);
    f.adjustment = adviseAdjustment({&setup.sheet, &levels, &stays});
    if (f.adjustment.sharesAssumed)
        f.assumed.push_back(
            {"the other ends move half as far as %1 when the sensor is turned, until turns have taught it",
             {byName(setup.sheet.rest().name)}});
    f.wear = b.wear.bins(f.meter.interval_s);
    if (b.drive) {
        f.machine = b.drive->strip();
        if (levels.hangs > 0 && driveAt(*setup.sheet.drive, levels.goodRest_V) > 0 &&
            driveAt(*setup.sheet.drive, levels.hangLevel_V) == 0) {
            f.machine.stops += levels.hangs;
            f.machine.stopsPossible += levels.hangs;
        }
    }
    std::vector<TimeSpan> wiggles = markedWiggles(timeline, last);
    if (!timeline.anyStep() && timeline.poses().empty()) {
        std::vector<Excursion> dropouts;
        for (const Excursion& e : f.excursions)
            if (e.kind == ExcursionKind::dropout) dropouts.push_back(e);
        wiggles = unmarkedWiggles(dropouts, b.travels);
    }
    std::vector<TimeSpan> moved = b.travels;
    f.phases = buildPhases({first.count() < 0 ? Time(0) : first, last, &moved, &wiggles, &f.blind, &b.jumps, &held});
    const Case facts = caseOf(f, levels, tallies, b);
    f.verdict = judge(facts);
    return f;
}

} // namespace stillwire
