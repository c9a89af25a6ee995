// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/reference_watch.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kStays = HeldLevel::kWindow; // readings away that make a new level
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

ReferenceWatch::ReferenceWatch(double resolution_V, double interval_s)
    : level_(resolution_V), fresh_(fromSeconds(std::max(kFreshIntervals * interval_s, kLeastFresh_s))) {}

void ReferenceWatch::push(const Reading& reading) {
    newest_ = reading;
    if (level_.empty()) return level_.add(reading.volts_V);
    const double held_V = level_.level_V();
    switch (dip_.push(reading.volts_V - held_V, level_.threshold_V())) {
    case DipDetector::Event::none: return level_.add(reading.volts_V);
    case DipDetector::Event::ended: close(); return level_.add(reading.volts_V);
    case DipDetector::Event::began:
        open_ = Excursion{};
        open_.from = reading.time;
        open_.held_V = held_V;
        open_.threshold_V = dip_.threshold_V();
        open_.direction = dip_.direction();
        open_.open = true;
        break;
    case DipDetector::Event::goesOn: break;
    }
    open_.to = reading.time;
    open_.extreme_V = held_V + dip_.extreme_V();
    if (++open_.readings < kStays) return;
    close();
    level_.restart();
    level_.add(reading.volts_V);
}

void ReferenceWatch::close() {
    if (!open_.open) return;
    open_.open = false;
    closed_.push_back(open_);
    dip_.reset();
}

void ReferenceWatch::pause() {
    close();
    level_.restart();
    newest_.reset();
}

std::vector<Excursion> ReferenceWatch::movements() const {
    std::vector<Excursion> all = closed_;
    if (open_.open) all.push_back(open_);
    return all;
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
