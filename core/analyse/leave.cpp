// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/leave.hpp"

#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr Time kGrace = 3s;
constexpr Time kHomeAgain = 10s;
} // namespace

Leave::Change Leave::placeChanged(const Context& place) {
    const Change change{place.wire != wire_, place.stepVisit == stepVisit_};
    // The needle has not come to its new wire yet: no mark but another wire's takes the leave to move away.
    needleComes_ = change.otherWire || (needleComes_ && asked_);
    asked_ = place.moveExpected || needleComes_;
    graceUntil_ = place.moveExpected ? place.from + kGrace : Time(-1);
    if (free_ && place.motion != ExpectedMotion::free) wasFree_ = true;
    free_ = place.motion == ExpectedMotion::free;
    wire_ = place.wire;
    if (!change.sameStep) stepFrom_ = place.from;
    stepVisit_ = place.stepVisit;
    return change;
}

bool Leave::mayMove(Time time, ExpectedMotion asked, bool established) const {
    return asked == ExpectedMotion::free || asked == ExpectedMotion::sweep || asked_ || wasFree_ ||
           time <= graceUntil_ || (asked == ExpectedMotion::moving && !established);
}

bool Leave::byGrace(ExpectedMotion asked) const {
    return (asked == ExpectedMotion::positions || asked == ExpectedMotion::still || wire_ != Wire::signal) && !asked_;
}

void Leave::leftUnjudged(Time from, double level_V) { home_ = Home{level_V, from}; }

bool Leave::comesHome(Time time, double volts_V, double within_V) const {
    return home_ && std::abs(volts_V - home_->level_V) <= within_V && time - home_->left < kHomeAgain;
}

} // namespace stillwire
