// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/sweep_bridge.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kSteps = 2.5;          // of the sweep's movement from reading to reading: no less is a leap
constexpr double kResidualShare = 0.12; // of the depth, by which a reading may lie off the line
constexpr double kAtOnce = 0.75;        // of the depth, within two readings: an aperture may be split by a leap
constexpr double kOffShare = 0.6;       // no reading between its first and last is nearer to the line
constexpr double kAlong = 0.5;          // of the sweep's movement, that the readings of each part go along
constexpr double kLeastWay_V = 0.02;    // that the line goes on one side; with less the wire is held
} // namespace

std::optional<Excursion> SweepBridge::across(std::size_t off, double threshold_V) const {
    const Point* const all = points_.data() + (count_ - 2 * kSide - off);
    const auto side = [&](std::size_t i) -> const Point& { return all[i < kSide ? i : i + off]; };
    const auto at_s = [&](const Point& p) { return toSeconds(p.time - all->time); };

    // Least squares through both sides.
    double time_s = 0, volts_V = 0, tt = 0, tv = 0;
    for (std::size_t i = 0; i < 2 * kSide; ++i) {
        time_s += at_s(side(i)) / (2 * kSide);
        volts_V += side(i).volts_V / (2 * kSide);
    }
    for (std::size_t i = 0; i < 2 * kSide; ++i) {
        const double dt_s = at_s(side(i)) - time_s;
        tt += dt_s * dt_s;
        tv += dt_s * (side(i).volts_V - volts_V);
    }
    const double slope_V_per_s = tv / tt;
    const auto offset_V = [&](const Point& p) { return p.volts_V - volts_V - slope_V_per_s * (at_s(p) - time_s); };

    const double way_V = std::abs(slope_V_per_s) * toSeconds(all[kSide - 1].time - all->time);
    if (way_V < kLeastWay_V) return std::nullopt;
    const auto along = [&](const Point& from, const Point& to) {
        const double due_V = slope_V_per_s * toSeconds(to.time - from.time);
        const double went_V = to.volts_V - from.volts_V;
        return went_V * due_V > 0 && std::abs(went_V) >= kAlong * std::abs(due_V);
    };
    if (!along(side(0), side(kSide - 1)) || !along(side(kSide), side(2 * kSide - 1))) return std::nullopt;
    Excursion e;
    const Point* const first = all + kSide;
    const Point* deepest = first;
    for (const Point* p = first; p != first + off; ++p)
        if (std::abs(offset_V(*p)) > std::abs(offset_V(*deepest))) deepest = p;
    const double depth_V = offset_V(*deepest);
    if (std::abs(depth_V) < std::max(threshold_V, kSteps * way_V / (kSide - 1))) return std::nullopt;
    for (std::size_t i = 0; i < 2 * kSide; ++i)
        if (std::abs(offset_V(side(i))) > kResidualShare * std::abs(depth_V)) return std::nullopt;
    const auto share = [&](std::size_t i) { return offset_V(first[i]) / depth_V; };
    for (std::size_t i = 1; i + 1 < off; ++i)
        if (share(i) < kOffShare) return std::nullopt;
    // A hand that paused, and hurried after, lies off the line too, but at rest.
    if (off > 3 && !along(first[1], first[off - 2])) return std::nullopt;
    const std::size_t second = off > 1 ? 1 : 0;
    if (std::max(share(0), share(second)) < kAtOnce || std::max(share(off - 1), share(off - 1 - second)) < kAtOnce)
        return std::nullopt;
    e.from = first->time;
    e.to = first[off - 1].time;
    e.extreme_V = deepest->volts_V;
    e.held_V = deepest->volts_V - depth_V;
    e.threshold_V = threshold_V;
    e.direction = depth_V < 0 ? Direction::down : Direction::up;
    e.readings = static_cast<int>(off);
    return e;
}

std::optional<Excursion> SweepBridge::push(Time time, double volts_V, double threshold_V) {
    if (count_ == points_.size()) {
        std::move(points_.begin() + 1, points_.end(), points_.begin());
        --count_;
    }
    points_[count_++] = {time, volts_V};
    if (count_ < kSide || std::abs(volts_V - points_[count_ - kSide].volts_V) < kAlong * kLeastWay_V)
        return std::nullopt;
    for (std::size_t off = 1; off <= kMostOff && 2 * kSide + off <= count_; ++off)
        if (auto found = across(off, threshold_V)) return found;
    return std::nullopt;
}

} // namespace stillwire
