// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/reference_watch.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kStays = 8; // readings at least, of a movement that stays
constexpr double kFreshIntervals = 2.5;
constexpr double kLeastFresh_s = 1.0;
constexpr int kWellSeen = 3; // readings from which a depth is no mere lower bound
constexpr double kSameShare = 0.25;
constexpr double kSameShortFactor = 3.0;
constexpr double kLeastHeld_V = 0.1; // a share of less means nothing

// How far it moved, as a share of where it was; negative: up.
double shareOf(double held_V, double extreme_V) { return 1 - extreme_V / held_V; }

bool sameShare(double signal, double reference, bool wellSeen) {
    if ((signal > 0) != (reference > 0)) return false;
    const double more = std::max(std::abs(signal), std::abs(reference));
    const double less = std::min(std::abs(signal), std::abs(reference));
    return wellSeen ? more - less <= kSameShare * more : more <= kSameShortFactor * less;
}

} // namespace

ReferenceWatch::ReferenceWatch(const MeterTraits& meter, double nominal_V)
    : search_({meter, nominal_V, {}}),
      fresh_(fromSeconds(std::max(kFreshIntervals * meter.interval_s, kLeastFresh_s))), classifier_(list_) {
    still_ = stillExpectation(search_.tuning());
}

void ReferenceWatch::List::moved(const Movement& m) {
    Excursion e;
    e.from = m.first;
    e.to = m.to;
    e.held_V = m.from_V;
    e.extreme_V = m.to_V;
    e.direction = m.to_V < m.from_V ? Direction::down : Direction::up;
    e.readings = kStays;
    all.push_back(e);
}

void ReferenceWatch::push(const Reading& reading) {
    newest_ = reading;
    search_.push(reading, 0, still_, classifier_);
}

void ReferenceWatch::pause() {
    if (newest_) search_.otherWire(newest_->time, classifier_);
    classifier_.otherWire();
    newest_.reset();
}

std::vector<Excursion> ReferenceWatch::movements() const {
    List list = list_;
    Classifier rest(classifier_, list);
    search_.tellRest(rest);
    if (const std::optional<Excursion> open = rest.open()) list.all.push_back(*open);
    return list.all;
}

bool ReferenceWatch::freshAt(Time now) const { return newest_ && now - newest_->time <= fresh_; }

bool wentWithReference(const SignalMove& signal, const std::vector<Excursion>& reference, Time slack) {
    if (signal.held_V < kLeastHeld_V) return false;
    const double share = shareOf(signal.held_V, signal.extreme_V);
    return std::any_of(reference.begin(), reference.end(), [&](const Excursion& r) {
        if (r.held_V < kLeastHeld_V || r.to + slack < signal.from || r.from - slack > signal.to) return false;
        return sameShare(share, shareOf(r.held_V, r.extreme_V),
                         signal.readings >= kWellSeen && r.readings >= kWellSeen);
    });
}

} // namespace stillwire
