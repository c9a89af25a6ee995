// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/hum.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillwire {
namespace {

constexpr double kLowest_Hz = 185, kOctaves = 2, kLoud = 0.1; // under the tones, which matter more
constexpr double kTurn = 2 * std::numbers::pi;
constexpr double kGlide_s = 0.02; // fast enough to follow a dropout

} // namespace

double humFrequency_Hz(double volts_V, double nominal_V) {
    if (!std::isfinite(volts_V) || !(nominal_V > 0)) return 0;
    return kLowest_Hz * std::exp2(kOctaves * std::clamp(volts_V / nominal_V, -0.25, 1.5));
}

bool Hum::fill(float* samples, std::size_t count, int rate_Hz) {
    const double aim_Hz = aim_Hz_;
    const bool silent = !(aim_Hz > 0);
    const double share = 1 - std::exp(-1 / (kGlide_s * rate_Hz));
    if (loud_ < 1e-4) {
        if (silent) { // most of the time, and for nothing
            std::fill_n(samples, count, 0.0F);
            return false;
        }
        now_Hz_ = aim_Hz; // from silence at once on the level
    }
    for (std::size_t i = 0; i < count; ++i) {
        if (!silent) now_Hz_ += share * (aim_Hz - now_Hz_);
        loud_ += share * ((silent ? 0 : kLoud) - loud_);
        phase_ += kTurn * now_Hz_ / rate_Hz;
        if (phase_ >= kTurn) phase_ -= kTurn;
        samples[i] = static_cast<float>(loud_ * std::sin(phase_));
    }
    return true;
}

} // namespace stillwire
