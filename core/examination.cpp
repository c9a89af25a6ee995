// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/examination.hpp"

#include "core/analyse/blind_watch.hpp"
#include "core/analyse/drive_strip.hpp"
#include "core/analyse/level_tracker.hpp"
#include "core/analyse/phase_builder.hpp"
#include "core/analyse/place_book.hpp"
#include "core/analyse/plateau_book.hpp"
#include "core/analyse/sweep_line.hpp"
#include "core/analyse/wear_map.hpp"
#include "core/judge/adjustment.hpp"
#include "core/judge/cold_warm.hpp"
#include "core/judge/coverage.hpp"
#include "core/judge/judgement.hpp"
#include "core/judge/levels.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr double kOverVoltage_V = 5.5;
constexpr int kOverVoltageReadings = 2; // one alone may be a needle slipping
constexpr double kDefaultInterval_s = 0.33;
constexpr double kIntervalTolerance = 0.2; // described and seen may differ by this much
constexpr Time kJumpShown = 3s;

MeterTraits completed(MeterTraits meter) {
    if (meter.interval_s <= 0) meter.interval_s = kDefaultInterval_s;
    if (meter.ranges.empty()) meter.ranges.push_back(MeterRange{});
    if (meter.aperture_s && (*meter.aperture_s <= 0 || *meter.aperture_s > meter.interval_s))
        meter.aperture_s = meter.interval_s;
    return meter;
}

std::vector<Window> windowsOf(const Sheet& sheet) {
    std::vector<Window> windows;
    for (const Position& position : sheet.positions) windows.push_back(position.window);
    return windows;
}

// The finest grid that the signal is read on.
double resolutionOf(const MeterTraits& meter) { return meter.rangeFor(5.0).resolution_V; }

} // namespace

struct Examination::Parts final : TrackerListener {
    explicit Parts(ExaminationSetup s)
        : setup(std::move(s)), meter(completed(setup.meter)),
          aperture(fromSeconds(meter.aperture_s.value_or(meter.interval_s))), places(setup.sheet), blind(meter),
          tracker(resolutionOf(meter), setup.sheet.play_V, windowsOf(setup.sheet), *this), sweep(resolutionOf(meter)),
          plateaus(aperture, resolutionOf(meter) / std::sqrt(12.0)),
          secondReference(aperture, resolutionOf(meter) / std::sqrt(12.0)), wear(setup.sheet) {
        if (setup.sheet.drive)
            drive.emplace(*setup.sheet.drive, setup.sheet.nominal_V, meter.interval_s, meter.aperture_s);
        secondReference.placeChanged(Place{});
        plateaus.placeChanged(places.now());
    }

    PushResult push(const Reading& reading);
    void push(const Mark& mark);
    void readSecondMeter(const Reading& reading);
    void watchVoltage(double volts_V);
    void place(Excursion excursion, bool shoulder);
    [[nodiscard]] PushResult pushResult() const { return {flagged, flaggedDirection, hasJumped, state}; }
    [[nodiscard]] bool onSignal() const { return places.now().wire == Probed::signal; }

    // TrackerListener
    void excursionFlagged(Time at, Direction direction) override;
    void excursionEnded(const Excursion& excursion, bool shoulder) override;
    void excursionWithdrawn() override;
    void jumped(const LevelJump& jump) override;
    void travelled(Time from, Time to) override;
    void held(Time time, double volts_V, bool settledAnew) override;

    // Findings, part by part.
    [[nodiscard]] MeterFigures meterFigures() const;
    [[nodiscard]] Excursion told(Excursion excursion, bool shoulder) const;
    [[nodiscard]] Case caseOf(const Findings& findings, const Levels& levels, const CoverageEvidence& coverage) const;
    [[nodiscard]] Findings findings() const;

    ExaminationSetup setup;
    MeterTraits meter;
    Time aperture;
    PlaceBook places;
    BlindWatch blind;
    LevelTracker tracker;
    SweepLine sweep;
    PlateauBook plateaus;
    PlateauBook secondReference;
    WearMap wear;
    std::optional<DriveStrip> drive;

    std::vector<Excursion> excursions;
    std::vector<LevelJump> jumps;
    std::vector<TimeSpan> travels;
    std::size_t readings = 0;
    double newest_V = 0;
    Time first{-1}, last{0}; // of all rows
    Time lastReading{0};
    Time lastJump{-10s};
    WireState state = WireState::silent;
    int overReadings = 0;
    bool overVoltage = false;
    // What the reading being pushed has shown; pushResult() packs it. Kept apart, for a struct written in pieces and
    // read whole stalls the processor at every reading.
    bool flagged = false, hasJumped = false;
    Direction flaggedDirection = Direction::down;
};

Excursion Examination::Parts::told(Excursion e, bool shoulder) const {
    const Place& at = places.at(e.from - aperture);
    e.step = at.step;
    e.unmarked = !at.step;
    e.poseIndex = at.poseIndex;
    if (at.poseIndex >= 0) e.pose = places.poses()[static_cast<std::size_t>(at.poseIndex)].where;
    // A shift no deeper than the sheet's play (and a count, for readings are rounded) that holds through the pose is
    // the bushing, not the track. A level first found while the arm was held to one side may be off by as much
    // itself.
    const bool middleUnknown = tracker.level().begunBy() == Hold::stirred;
    e.play_V = (middleUnknown ? 2 : 1) * setup.sheet.play_V + resolutionOf(meter);
    const bool mayBePlay = at.poseIndex >= 0 || at.step == Step::wiggleShaft || at.step == Step::wiggleHarness;
    if (mayBePlay && e.depth_V() <= e.play_V && (e.readings >= 2 || shoulder)) e.kind = ExcursionKind::play;
    return e;
}

void Examination::Parts::excursionFlagged(Time, Direction direction) {
    flagged = true;
    flaggedDirection = direction;
}

void Examination::Parts::excursionEnded(const Excursion& excursion, bool shoulder) { place(excursion, shoulder); }

void Examination::Parts::place(Excursion excursion, bool shoulder) {
    Excursion e = told(std::move(excursion), shoulder);
    // A needle on a supply wire shivers by as much.
    const bool probing = e.step == Step::reference || e.step == Step::ground;
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
    const Place& at = places.at(j.at - aperture);
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

void Examination::Parts::held(Time time, double volts_V, bool settledAnew) {
    plateaus.held(time, volts_V, settledAnew, tracker.level().noise_V(), tracker.level().threshold_V());
    if (!onSignal()) return;
    wear.held(volts_V, tracker.held_V());
    if (drive) drive->held(time, volts_V);
}

void Examination::Parts::readSecondMeter(const Reading& reading) {
    if (!reading.hasNumber() || reading.flags.has(Flag::overload) || reading.flags.has(Flag::hold)) return;
    const double resolution_V = resolutionOf(meter);
    secondReference.held(reading.time, reading.volts_V, false, resolution_V, 3 * resolution_V);
}

void Examination::Parts::watchVoltage(double volts_V) {
    overReadings = volts_V > kOverVoltage_V && onSignal() ? overReadings + 1 : 0;
    overVoltage = overVoltage || overReadings >= kOverVoltageReadings;
}

PushResult Examination::Parts::push(const Reading& reading) {
    if (first.count() < 0) first = reading.time;
    last = reading.time;
    ++readings;
    flagged = hasJumped = false;
    if (reading.flags.has(Flag::ref)) {
        readSecondMeter(reading);
        return pushResult();
    }
    lastReading = reading.time;
    if (!blind.push(reading)) {
        tracker.blind();
        sweep.reset();
        state = WireState::blind;
        return pushResult();
    }
    places.countReading();
    newest_V = reading.volts_V;
    const Asked asked = places.now().asked;
    if (reading.volts_V > kOverVoltage_V || overReadings > 0) watchVoltage(reading.volts_V);
    const ReadingClass seen = tracker.push(reading.time, reading.volts_V, asked);
    if (asked == Asked::sweep) {
        const double foot_V =
            std::max(2 * setup.sheet.play_V, 6 * tracker.level().foot_V()); // a hand turns the shaft
        const double limit_V = std::max(tracker.level().threshold_V(), foot_V);
        if (auto ended = sweep.push(reading.time, reading.volts_V, limit_V)) {
            flagged = true;
            flaggedDirection = ended->direction;
            place(*ended, false);
        }
    }
    if (seen == ReadingClass::away && onSignal()) {
        if (drive) drive->away(reading.time, reading.volts_V, tracker.held_V());
        wear.moving(tracker.held_V());
    } else if (seen == ReadingClass::moving && onSignal()) {
        if (drive) drive->moving(reading.time, reading.volts_V);
        wear.moving(reading.volts_V);
    }
    if (overReadings > 0)
        state = WireState::overVoltage;
    else if (seen == ReadingClass::away)
        state = WireState::dropped;
    else if (seen == ReadingClass::moving)
        state = WireState::moving;
    else
        state = last - lastJump < kJumpShown ? WireState::jumped : WireState::steady;
    return pushResult();
}

void Examination::Parts::push(const Mark& mark) {
    if (first.count() < 0) first = mark.time;
    last = std::max(last, mark.time);
    if (mark.kind() == MarkKind::gap) {
        blind.gapMark();
        tracker.blind();
    }
    const std::size_t placesBefore = places.count();
    const bool levelMayFollow = places.push(mark);
    if (places.count() == placesBefore) return;
    tracker.placeChanged(places.now());
    plateaus.placeChanged(places.now());
    if (levelMayFollow) sweep.reset();
}

MeterFigures Examination::Parts::meterFigures() const {
    MeterFigures figures;
    const double seen_s = blind.interval_s();
    const bool differs = seen_s > 0 && std::abs(seen_s - meter.interval_s) > kIntervalTolerance * meter.interval_s;
    figures.interval_s = differs && readings > 30 ? seen_s : meter.interval_s;
    figures.aperture_s = meter.aperture_s;
    figures.resolution_V = resolutionOf(meter);
    // On the move nothing is held; the tracker's level is then the one that was left.
    figures.held_V = state == WireState::moving ? newest_V : tracker.held_V();
    figures.noise_V = tracker.level().noise_V();
    figures.threshold_V = tracker.threshold_V();
    return figures;
}

Case Examination::Parts::caseOf(const Findings& found, const Levels& levels, const CoverageEvidence& coverage) const {
    Case facts;
    facts.sheet = &setup.sheet;
    facts.places = &places;
    facts.findings = &found;
    facts.levels = &levels;
    facts.shaft = tally(coverage, Shaken::shaft);
    facts.harness = tally(coverage, Shaken::harness);
    facts.referenceWire = tallyStep(coverage, Step::wiggleReference);
    facts.groundWire = tallyStep(coverage, Step::wiggleGround);
    facts.referenceStill = tallyStep(coverage, Step::reference);
    facts.moving = tallyMoving(coverage);
    facts.untouched = tallyUntouched(coverage);
    for (const Excursion& e : found.excursions)
        if (e.unmarked && votes(e, places)) ++facts.unmarkedDropouts;
    facts.blackOnSensorGround = setup.black == BlackLead::sensorGround;
    facts.meterKnown = setup.meterKnown;
    return facts;
}

Findings Examination::Parts::findings() const {
    Findings f;
    f.readings = readings;
    f.duration = first.count() < 0 ? Time(0) : last - first;
    f.meter = meterFigures();
    f.state = state;
    f.overVoltage = overVoltage;
    f.blind = blind.spans(last);
    if (readings > 0 && blind.blindAt(last)) f.state = WireState::blind;
    if (!setup.meterKnown) f.assumed.push_back({"meter accuracy: 1 %% + 5 counts", {}});
    f.excursions = excursions;
    if (std::optional<Excursion> open = tracker.open()) f.excursions.push_back(told(*open, false));
    f.jumps = jumps;

    const std::vector<Plateau> held = plateaus.all();
    const std::vector<Plateau> reference = secondReference.all();
    LevelEvidence levelEvidence{&setup.sheet, &meter, &places, &held, setup.black == BlackLead::sensorGround,
                                std::nullopt};
    if (!reference.empty()) {
        levelEvidence.secondReference = reference.front();
        levelEvidence.secondReference->place.wire = Probed::reference;
    }
    const Levels levels = weighLevels(levelEvidence);
    f.reference = levels.reference;
    f.ground = levels.ground;
    f.positions = levels.positions;
    if (!levels.supply.referenceMeasured)
        f.assumed.push_back({"reference: %1, the nominal, not measured", {volts(levels.supply.reference.level_V)}});
    if (!levels.supply.groundMeasured && setup.black != BlackLead::sensorGround)
        f.assumed.push_back(
            {"ground: %1, half of the allowed drop, not measured", {volts(levels.supply.ground.level_V)}});

    CoverageEvidence coverage{&setup.sheet,
                              &places,
                              &held,
                              &f.excursions,
                              &f.jumps,
                              &f.blind,
                              f.meter.interval_s,
                              meter.aperture_s,
                              tracker.level().threshold_V(),
                              last};
    f.steps = coverSteps(coverage);
    f.wiggle = worseCovered(f.steps);
    f.coldWarm = compareColdWarm(coverage);
    const std::vector<Plateau> stays = settledStays(held);
    f.adjustment = adviseAdjustment({&setup.sheet, &levels, &stays});
    f.wear = wear.bins(f.meter.interval_s);
    if (drive) {
        f.machine = drive->strip();
        if (levels.hangs > 0 && driveAt(*setup.sheet.drive, levels.goodRest_V) > 0 &&
            driveAt(*setup.sheet.drive, levels.hangLevel_V) == 0) {
            f.machine.stops += levels.hangs;
            f.machine.stopsPossible += levels.hangs;
        }
    }
    std::vector<TimeSpan> wiggles = markedWiggles(places, last);
    if (!places.anyStep() && places.poses().empty()) {
        std::vector<Excursion> dropouts;
        for (const Excursion& e : f.excursions)
            if (e.kind == ExcursionKind::dropout) dropouts.push_back(e);
        wiggles = unmarkedWiggles(dropouts);
    }
    std::vector<TimeSpan> moved = travels;
    f.phases = buildPhases({first.count() < 0 ? Time(0) : first, last, &moved, &wiggles, &f.blind, &f.jumps, &held});
    f.verdict = judge(caseOf(f, levels, coverage));
    return f;
}

Examination::Examination(ExaminationSetup setup) : parts_(std::make_unique<Parts>(std::move(setup))) {}
Examination::Examination(Examination&&) noexcept = default;
Examination& Examination::operator=(Examination&&) noexcept = default;
Examination::~Examination() = default;

PushResult Examination::push(const Reading& reading) { return parts_->push(reading); }
void Examination::push(const Mark& mark) { parts_->push(mark); }
Findings Examination::findings() const { return parts_->findings(); }

} // namespace stillwire
