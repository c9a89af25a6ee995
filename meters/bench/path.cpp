// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/path.hpp"

#include <algorithm>

namespace stillwire::bench {

double Path::at(double t_s) const {
    if (t_s >= knots_.back().t_s) return knots_.back().value;
    if (t_s <= knots_.front().t_s) return knots_.front().value;
    if (hint_ + 1 >= knots_.size() || knots_[hint_].t_s > t_s) hint_ = 0;
    while (knots_[hint_ + 1].t_s < t_s) ++hint_;
    const Knot &a = knots_[hint_], &b = knots_[hint_ + 1];
    return a.value + (b.value - a.value) * (t_s - a.t_s) / (b.t_s - a.t_s);
}

double Path::nextKnot(double t_s) const {
    if (t_s >= knots_.back().t_s) return kNever_s;
    for (const Knot& knot : knots_) {
        if (knot.t_s > t_s) return knot.t_s;
    }
    return kNever_s;
}

void Path::jump(double t_s, double value) {
    knots_.assign(1, {t_s, value});
    hint_ = 0;
}

void Path::goTo(double t_s, double target, double length_s) {
    const double now = at(t_s);
    knots_ = {{t_s, now}, {t_s + std::max(length_s, 1e-6), target}};
    hint_ = 0;
}

void Path::ease(double t_s, double target, double length_s) {
    constexpr int kPieces = 6;
    const double from = at(t_s);
    const double length = std::max(length_s, 1e-6);
    knots_.assign(1, {t_s, from});
    for (int i = 1; i <= kPieces; ++i) {
        const double u = static_cast<double>(i) / kPieces;
        knots_.push_back({t_s + u * length, i == kPieces ? target : from + (target - from) * u * u * (3 - 2 * u)});
    }
    hint_ = 0;
}

void Path::follow(double t_s, const Path& leader, double slack) {
    const double half = 0.5 * slack;
    double value = at(t_s);
    std::vector<Knot> out{{t_s, std::clamp(value, leader.at(t_s) - half, leader.at(t_s) + half)}};
    value = out.front().value;
    double t = t_s, lead = leader.at(t_s);
    for (double next = leader.nextKnot(t); next < kNever_s; next = leader.nextKnot(t)) {
        const double to = leader.at(next);
        const double low = to - half, high = to + half;
        if (value < low || value > high) {
            // Picked up on the way: rest until the slack is gone, then along with the leader.
            const double edge = value < low ? value + half : value - half; // leader where the slack is gone
            const double meet = lead == to ? t : t + (next - t) * (edge - lead) / (to - lead);
            if (meet > t && meet < next) out.push_back({meet, value});
            value = value < low ? low : high;
        }
        out.push_back({next, value});
        t = next;
        lead = to;
    }
    knots_ = std::move(out);
    hint_ = 0;
}

} // namespace stillwire::bench
