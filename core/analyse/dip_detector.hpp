// SPDX-License-Identifier: GPL-3.0-or-later
// Begin, end, residual and duration of a dip by the logic of the open voltage-dip standard (IEC 61000-4-30, 5.4): it
// begins when the depth passes the threshold and ends when the value is back within threshold less hysteresis.
#pragma once

#include "core/findings/findings.hpp"

namespace stillwire {

// Hysteresis is a fifth of the threshold: the standard's usual 2 % of the reference against its usual dip threshold
// of 10 % below the reference.
inline constexpr double kHysteresisShare = 0.2;

class DipDetector {
public:
    enum class Event { none, began, goesOn, ended };

    // `offset_V`: reading less held level. A swing straight to the other side ends the dip; the caller begins the
    // next.
    Event push(double offset_V, double threshold_V) {
        if (!inside_) {
            if (offset_V <= threshold_V && offset_V >= -threshold_V)
                return Event::none; // exactly at it is not beyond it
            inside_ = true;
            up_ = offset_V > 0;
            threshold_V_ = threshold_V;
            extreme_V_ = offset_V;
            return Event::began;
        }
        const double depth_V = up_ ? offset_V : -offset_V;
        if (depth_V <= threshold_V_ * (1 - kHysteresisShare)) {
            inside_ = false;
            return Event::ended;
        }
        if (up_ ? offset_V > extreme_V_ : offset_V < extreme_V_) extreme_V_ = offset_V;
        return Event::goesOn;
    }

    void reset() { inside_ = false; }
    [[nodiscard]] bool inside() const { return inside_; }
    [[nodiscard]] Direction direction() const { return up_ ? Direction::up : Direction::down; }
    [[nodiscard]] double extreme_V() const { return extreme_V_; } // offset, signed
    [[nodiscard]] double threshold_V() const { return threshold_V_; }

private:
    bool inside_ = false;
    bool up_ = false;
    double threshold_V_ = 0;
    double extreme_V_ = 0;
};

} // namespace stillwire
