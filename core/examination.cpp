// SPDX-License-Identifier: GPL-3.0-or-later
// The way in: what a reading and a mark do to the stages.
#include "core/examination.hpp"

#include "core/examination_parts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr double kOverVoltage_V = 5.5;
constexpr int kOverVoltageReadings = 2; // one alone may be a needle slipping
constexpr double kDefaultInterval_s = 0.33;
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

// Where a second meter stays: on the reference, whatever the first one does.
Context onReference(Time from) {
    Context place;
    place.from = from;
    place.wire = Wire::reference;
    return place;
}

} // namespace

double resolutionOf(const MeterTraits& meter) { return meter.rangeFor(5.0).resolution_V; }

Examination::Parts::Parts(ExaminationSetup given)
    : setup(std::move(given)), meter(completed(setup.meter)),
      referenceMeter(setup.referenceMeter ? completed(*setup.referenceMeter) : meter),
      aperture(fromSeconds(meter.aperture_s.value_or(meter.interval_s))),
      referenceAperture(fromSeconds(referenceMeter.aperture_s.value_or(referenceMeter.interval_s))),
      timeline(setup.sheet), blind(meter),
      follower({resolutionOf(meter), setup.sheet.play_V, windowsOf(setup.sheet), setup.sheet.rest().window}, *this),
      tracker(follower.tracker()), plateaus(aperture, resolutionOf(meter) / std::sqrt(12.0)),
      secondReference(referenceAperture, resolutionOf(referenceMeter) / std::sqrt(12.0)),
      referenceBlind(referenceMeter), referenceWatch(resolutionOf(referenceMeter), referenceMeter.interval_s),
      wear(setup.sheet) {
    if (setup.sheet.drive)
        drive.emplace(*setup.sheet.drive, setup.sheet.nominal_V, meter.interval_s, meter.aperture_s);
    const auto& ranges = setup.meter.ranges; // as described: what a trace lets guess is no ground for this
    overloadIsOver = !ranges.empty() && ranges.front().fullScale_V >= kOverVoltage_V;
    secondReference.placeChanged(onReference(Time(0)));
    plateaus.placeChanged(timeline.now());
}

void Examination::Parts::readSecondMeter(const Reading& reading) {
    if (!referenceBlind.push(reading)) return; // no volts, whatever it shows
    // Before hooking up is done, and with the key off, the reference is nothing to judge.
    if (timeline.now().motion == ExpectedMotion::free) return referenceWatch.pause();
    referenceWatch.push(reading);
    const double resolution_V = resolutionOf(referenceMeter);
    secondReference.held(&reading, 1, false, resolution_V, 3 * resolution_V);
}

void Examination::Parts::watchVoltage(double volts_V) {
    overReadings = volts_V > kOverVoltage_V && onSignal() ? overReadings + 1 : 0;
    overVoltage = overVoltage || overReadings >= kOverVoltageReadings;
}

void Examination::Parts::look(const Reading& reading) {
    if (first.count() < 0) first = reading.time;
    last = reading.time;
    ++readings;
    flagged = hasJumped = false;
    if (reading.flags.has(Flag::ref)) {
        readSecondMeter(reading);
        return;
    }
    lastReading = reading.time;
    if (!blind.push(reading)) {
        const bool over = reading.flags.has(Flag::overload) && !reading.flags.has(Flag::unit);
        if (over && overloadIsOver) watchVoltage(std::numeric_limits<double>::infinity());
        follower.blind();
        state = WireState::blind;
        return;
    }
    timeline.countReadings(1);
    newest_V = reading.volts_V;
    // A reading belongs to the place in force when its aperture began.
    const Time began = reading.time - aperture;
    const ExpectedMotion asked = (began < timeline.now().from ? timeline.at(began) : timeline.now()).motion;
    if (reading.volts_V > kOverVoltage_V || overReadings > 0) watchVoltage(reading.volts_V);
    const ReadingClass seen = follower.push(reading.time, reading.volts_V, asked);
    if (seen == ReadingClass::away)
        renewals.away(began, reading.volts_V - tracker.held_V(), tracker.threshold_V());
    else
        renewals.back();
    if (seen == ReadingClass::away && onSignal()) {
        if (drive) drive->away(reading.time, reading.volts_V, tracker.held_V());
        wear.moving(tracker.held_V());
    } else if (seen == ReadingClass::moving && onSignal()) {
        if (drive) drive->moving(reading.time, reading.volts_V);
        wear.moving(reading.volts_V);
    }
    state = stateOf(seen, last);
}

WireState Examination::Parts::stateOf(ReadingClass seen, Time at) const {
    if (overReadings > 0) return WireState::overVoltage;
    if (seen == ReadingClass::away) return WireState::dropped;
    if (seen == ReadingClass::moving) return WireState::moving;
    return at - lastJump < kJumpShown ? WireState::jumped : WireState::steady;
}

// Until one of the stages has to look at a reading.
QuietTerms Examination::Parts::quietTerms() const {
    const bool nearOver = tracker.held_V() + 2 * tracker.threshold_V() > kOverVoltage_V;
    const std::optional<Time> limit = blind.quietLimit();
    const Context& now = timeline.now();
    const std::size_t most = std::min(QuietGate::kMost, follower.mostQuiet(now.motion));
    if (nearOver || overReadings > 0 || !limit || most == 0) return {};
    return {tracker.held_V(), tracker.quietReach_V(lastReading), now.from + aperture, *limit, lastReading, most};
}

void Examination::Parts::pushQuiet(const Reading* from, std::size_t count) {
    const Reading& newest = from[count - 1];
    last = lastReading = newest.time;
    readings += count;
    newest_V = newest.volts_V;
    flagged = hasJumped = false;
    blind.pushQuiet(from, count);
    timeline.countReadings(static_cast<int>(count));
    follower.pushQuiet(from, count, timeline.now().motion);
    renewals.back();
    state = stateOf(ReadingClass::held, last);
}

void Examination::Parts::settle() {
    if (gate.count() > 0) pushQuiet(gate.kept(), gate.count());
    gate.close();
}

PushResult Examination::Parts::push(const Reading& reading) {
    if (gate.take(reading)) return {false, flaggedDirection, false, stateOf(ReadingClass::held, reading.time)};
    settle();
    look(reading);
    gate.open(quietTerms());
    return pushResult();
}

void Examination::Parts::push(const Reading* from, std::size_t count) {
    settle();
    while (count > 0) {
        std::size_t taken = quietRun(quietTerms(), from, count);
        if (taken > 0) {
            pushQuiet(from, taken);
        } else {
            look(*from);
            taken = 1;
        }
        from += taken;
        count -= taken;
    }
}

void Examination::Parts::push(const Mark& mark) {
    settle();
    if (first.count() < 0) first = mark.time;
    last = std::max(last, mark.time);
    if (mark.as<GapMark>()) {
        blind.gapMark();
        follower.blind();
        referenceWatch.pause();
    }
    if (const auto* probe = mark.as<ProbeMark>()) probedAtController |= probe->side == ProbeSide::controllerSide;
    const std::size_t placesBefore = timeline.count();
    const bool levelMayFollow = timeline.push(mark);
    if (timeline.count() == placesBefore) return;
    follower.placeChanged(timeline.now(), levelMayFollow);
    plateaus.placeChanged(timeline.now());
    // The reference of each step by itself: how much it changes between them counts.
    if (mark.as<StepMark>()) secondReference.placeChanged(onReference(mark.time));
}

Examination::Examination(ExaminationSetup setup) : parts_(std::make_unique<Parts>(std::move(setup))) {}
Examination::Examination(Examination&&) noexcept = default;
Examination& Examination::operator=(Examination&&) noexcept = default;
Examination::~Examination() = default;

PushResult Examination::push(const Reading& reading) { return parts_->push(reading); }
void Examination::push(const Reading* first, std::size_t count) {
    if (count == 1)
        parts_->push(*first);
    else
        parts_->push(first, count);
}
void Examination::push(const Mark& mark) { parts_->push(mark); }
Findings Examination::findings() const {
    parts_->settle();
    return parts_->findings();
}

} // namespace stillwire
