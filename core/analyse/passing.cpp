// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/passing.hpp"

#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kPasses = 1500ms;    // where a wire has not moved in this, it is back and not on its way
constexpr double kStaysShare = 0.5; // by more than this much of the limit
} // namespace

void Passing::begin(Waiting waiting, double back_V) {
    back_ = waiting.excursion.to;
    back_V_ = back_V;
    waiting_ = std::move(waiting);
}

Passing::Turn Passing::push(Time time, double volts_V, double held_V, double limit_V) {
    const double offset_V = volts_V - held_V;
    const bool off = std::abs(offset_V) > limit_V;
    if (off && (offset_V > 0) != (waiting_->excursion.direction == Direction::up)) return Turn::crossed;
    const bool late = time - back_ >= kPasses;
    if (off || (late && std::abs(volts_V - back_V_) <= kStaysShare * limit_V)) return Turn::cameBack;
    if (late) {
        back_ = time;
        back_V_ = volts_V;
    }
    return Turn::goesOn;
}

} // namespace stillwire
