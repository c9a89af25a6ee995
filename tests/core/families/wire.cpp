// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/wire.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::families {

Span Wire::hold(double duration_s) {
    const double from_s = now_s_;
    now_s_ += duration_s;
    level.add(now_s_, level_V_);
    // Said in two parts it is still one hold.
    const bool goesOn = !holds.empty() && holds.back().to_s == from_s && holds.back().tremor_V == 0 &&
                        holds.back().level_V == level_V_ && (moves.empty() || moves.back().to_s < from_s);
    if (goesOn)
        holds.back().to_s = now_s_;
    else
        holds.push_back({from_s, now_s_, level_V_, 0, 0});
    return {from_s, now_s_};
}

Span Wire::hold(double duration_s, Tremor tremor, Dice& dice) {
    holds.push_back({now_s_, now_s_ + duration_s, level_V_, tremor.sd_V, tremor.memory_s});
    // A step of 20 ms is a tenth of the shortest memory and aperture there is, or finer.
    constexpr double kStep_s = 0.02;
    const double keep = std::exp(-kStep_s / tremor.memory_s);
    const double push_V = tremor.sd_V * std::sqrt(1 - keep * keep);
    double away_V = tremor.sd_V * dice.normal();
    for (double t = 0; t < duration_s - kStep_s; t += kStep_s) {
        level.add(now_s_ + t, level_V_ + away_V);
        away_V = keep * away_V + push_V * dice.normal();
    }
    now_s_ += duration_s;
    level.add(now_s_, level_V_);
    return {holds.back().from_s, now_s_};
}

Span Wire::move(double level_V, double over_s, bool sweep) {
    moves.push_back({now_s_, now_s_ + over_s, level_V_, level_V, sweep});
    now_s_ += over_s;
    level_V_ = level_V;
    level.add(now_s_, level_V);
    return {moves.back().from_s, now_s_};
}

Span Wire::creep(double level_V, double over_s) {
    unasked.push_back({now_s_, now_s_ + over_s});
    now_s_ += over_s;
    level_V_ = level_V;
    level.add(now_s_, level_V);
    return unasked.back();
}

void Wire::dropout(double from_s, double duration_s, double depth_V, double edge_s) {
    Dropout made{from_s, from_s + duration_s, {}, 0, 0};
    edge_s = std::min(edge_s, 0.5 * duration_s);
    made.offset.add(from_s, 0);
    made.offset.add(from_s + edge_s, depth_V);
    made.offset.add(from_s + duration_s - edge_s, depth_V);
    made.offset.add(from_s + duration_s, 0);
    dropouts.push_back(std::move(made));
}

void Wire::fading(double from_s, double duration_s, double depth_V, double memory_s, bool slowBack) {
    Dropout made{from_s, from_s + duration_s, {}, 0, 0};
    constexpr int kPieces = 24;
    for (int i = 0; i <= kPieces; ++i) {
        const double t = duration_s * i / kPieces;
        made.offset.add(from_s + t, depth_V * (1 - std::exp(-t / memory_s)));
    }
    const double deepest_V = depth_V * (1 - std::exp(-duration_s / memory_s));
    if (slowBack) {
        for (int i = 1; i <= kPieces; ++i) {
            const double t = 7 * memory_s * i / kPieces;
            made.offset.add(from_s + duration_s + t, deepest_V * std::exp(-t / memory_s));
        }
        made.to_s = from_s + duration_s + 7 * memory_s;
    }
    made.offset.add(made.to_s, 0);
    dropouts.push_back(std::move(made));
}

void Wire::pull(double from_s, double duration_s, double to_V, double rough_V) {
    dropouts.push_back({from_s, from_s + duration_s, {}, to_V, rough_V});
}

void Wire::rough(double from_s, double duration_s, double depth_V, double rough_V) {
    dropout(from_s, duration_s, depth_V);
    dropouts.back().rough_V = rough_V;
}

double Wire::drift_V(double at_s) const { return warm_V_ == 0 ? 0 : warm_V_ * std::exp(-at_s / warm_s_); }

void Wire::settle() {
    const auto earlier = [](const auto& a, const auto& b) { return a.from_s < b.from_s; };
    std::stable_sort(dropouts.begin(), dropouts.end(), earlier);
    std::stable_sort(gaps.begin(), gaps.end(), earlier);
}

} // namespace stillwire::families
