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

constexpr int kOverVoltageReadings = 2; // one alone may be a tip slipping
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
      aperture(fromSeconds(meter.longestAperture_s())), blind(meter), books(setup.sheet, meter), classifier(books),
      search({meter, setup.sheet.nominal_V, windowsOf(setup.sheet), setup.tuning}),
      secondReference(resolutionOf(referenceMeter) / std::sqrt(12.0)), referenceBlind(referenceMeter),
      referenceWatch(referenceMeter, setup.sheet.nominal_V) {
    // Of a described range: what a trace lets guess is no ground for this.
    overloadIsOver = setup.meterKnown && setup.meter.ranges.front().fullScale_V >= setup.sheet.overVoltage_V();
    expected = expectedBefore = expectationAt(books.timeline.now(), stepFrom, search.tuning(), meter.interval_s);
}

void Examination::Parts::readSecondMeter(const Reading& reading) {
    if (!referenceBlind.push(reading)) return; // no volts, whatever it shows
    // Before hooking up is done, and with the key off, the reference is nothing to judge.
    if (books.timeline.now().motion == ExpectedMotion::free) return referenceWatch.pause();
    referenceWatch.push(reading);
    const double resolution_V = resolutionOf(referenceMeter);
    // The reference of each step by itself: how much it changes between them counts.
    const std::vector<StepVisit>& visits = books.timeline.stepVisits();
    const Context place = onReference(visits.empty() ? Time(0) : visits.back().from);
    const Time began = reading.time - fromSeconds(referenceMeter.longestAperture_s());
    if (began < place.from) return;
    secondReference.held(&reading, 1, static_cast<int>(visits.size()), place, resolution_V, 3 * resolution_V);
}

// Between the steps, and before the meter is hooked up, the lead may touch anything.
bool Examination::Parts::connected(int at) const {
    const Context& place = books.timeline.context(at);
    return place.step ? place.step != Step::hookUp : !books.timeline.anyStep();
}

void Examination::Parts::watchVoltage(double volts_V, int at) {
    const bool over = volts_V > setup.sheet.overVoltage_V() && books.timeline.context(at).wire != Wire::ground;
    overReadings = over && connected(at) ? overReadings + 1 : 0;
    overVoltage = overVoltage || overReadings >= kOverVoltageReadings;
}

void Examination::Parts::look(const Reading& reading) {
    if (first.count() < 0) first = reading.time;
    last = reading.time;
    ++readings;
    if (reading.flags.has(Flag::ref)) {
        readSecondMeter(reading);
        return;
    }
    lastReading = reading.time;
    if (!blind.push(reading)) {
        const bool over = reading.flags.has(Flag::overload) && !reading.flags.has(Flag::unit);
        if (over && overloadIsOver)
            watchVoltage(std::numeric_limits<double>::infinity(),
                         static_cast<int>(books.timeline.indexAt(reading.time - aperture)));
        search.blind();
        state = WireState::blind;
        return;
    }
    if (blind.gapBefore()) search.blind();
    books.timeline.countReadings(1);
    newest_V = reading.volts_V;
    // A reading belongs to the marks in force when its aperture began.
    const Time began = reading.time - aperture;
    const int at = static_cast<int>(books.timeline.indexAt(began));
    if (reading.volts_V > setup.sheet.overVoltage_V() || overReadings > 0) watchVoltage(reading.volts_V, at);
    search.push(reading, at, at == context ? expected : expectedBefore, classifier);
    hasJumped = books.jumps.size() > jumpsSeen;
    jumpsSeen = books.jumps.size();
    if (hasJumped) lastJump = last;
    state = stateNow();
}

WireState Examination::Parts::stateNow() const {
    if (overReadings > 0) return WireState::overVoltage;
    const Doing doing = search.now().doing;
    if (doing == Doing::away || doing == Doing::offLine) return WireState::dropped;
    if (doing == Doing::moving) return WireState::moving;
    return heldAt(last);
}

WireState Examination::Parts::heldAt(Time at) const {
    return at - lastJump < kJumpShown ? WireState::jumped : WireState::steady;
}

// Until one of the stages has to look at a reading.
QuietTerms Examination::Parts::quietTerms() const {
    const Search::Quiet quiet = search.quiet(expected);
    const bool nearOver = quiet.level_V + 2 * quiet.reach_V > setup.sheet.overVoltage_V();
    const std::optional<Time> limit = blind.quietLimit();
    if (nearOver || overReadings > 0 || !limit || quiet.most == 0) return {};
    return {quiet.level_V,
            quiet.reach_V,
            books.timeline.now().from + aperture,
            quiet.due,
            *limit,
            lastReading,
            std::min(QuietGate::kMost, static_cast<std::size_t>(quiet.most))};
}

void Examination::Parts::pushQuiet(const Reading* from, std::size_t count) {
    const Reading& newest = from[count - 1];
    last = lastReading = newest.time;
    readings += count;
    newest_V = newest.volts_V;
    blind.pushQuiet(from, count);
    books.timeline.countReadings(static_cast<int>(count));
    search.pushQuiet(from, count, context, expected, classifier);
    state = stateNow();
}

void Examination::Parts::settle() {
    if (gate.count() > 0) pushQuiet(gate.kept(), gate.count());
    gate.close();
}

PushResult Examination::Parts::push(const Reading& reading) {
    bool taken = gate.take(reading);
    if (!taken) {
        settle();
        gate.open(quietTerms());
        taken = gate.take(reading);
    }
    if (taken) return {false, Direction::down, false, heldAt(reading.time)};
    look(reading);
    gate.open(quietTerms());
    PushResult result;
    result.state = state;
    result.jumped = hasJumped;
    if (state == WireState::dropped && search.now().from != flaggedFrom) {
        flaggedFrom = search.now().from;
        result.dropoutFlagged = true;
        result.direction = newest_V < search.now().level.level_V() ? Direction::down : Direction::up;
    }
    return result;
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
        search.blind();
        referenceWatch.pause();
    }
    if (const auto* probe = mark.as<ProbeMark>()) probedAtController |= probe->side == ProbeSide::controllerSide;
    const std::size_t before = books.timeline.count();
    books.timeline.push(mark);
    if (books.timeline.count() != before) placeChanged();
}

void Examination::Parts::placeChanged() {
    const Context& before = books.timeline.context(context);
    const Context& now = books.timeline.now();
    if (now.stepVisit != before.stepVisit) stepFrom = now.from;
    expectedBefore = expected;
    context = static_cast<int>(books.timeline.count()) - 1;
    expected = expectationAt(now, stepFrom, search.tuning(), meter.interval_s);
    if (now.wire != before.wire) {
        search.otherWire(now.from, classifier);
        classifier.otherWire();
    } else if (now.moveExpected) {
        search.moveAsked(expected);
    }
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
