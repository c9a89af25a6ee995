// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/trend.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
} // namespace

// Of a straight line by least squares through n readings that are evenly spaced, k intervals from their middle:
// 1 + 1/n + 12 k^2 / (n (n^2 - 1)).
double Trend::spread_V(Time time) const {
    const double n = readings_;
    const double ahead = interval_s_ > 0 ? toSeconds(time - last_) / interval_s_ : 1;
    const double k = ahead + (n - 1) / 2;
    return std::sqrt(uneven_V2_ * (1 + 1 / n + 12 * k * k / (n * (n * n - 1))));
}

double Trend::reach_V(const Tuning& tuning, const MeterAt& meter, Time time) const {
    const double young = 1 + tuning.line.young / weight_; // its own unevenness is not known well yet
    return std::max({tuning.reach.least_V, tuning.reach.noises * young * spread_V(time),
                     tuning.reach.counts * meter.resolution_V});
}

void Trend::add(const Tuning& tuning, const MeterAt& meter, Time time, double volts_V) {
    const Tuning::Line& line = tuning.line;
    if (volts_V == newest_V_ && readings_ > 1) return look(tuning, meter, time); // shown again, and nothing new
    const double dt_s = toSeconds(time - last_);
    const double off_V = readings_ < 2 ? 0 : volts_V - at(time);
    if (dt_s > 0 && (readings_ < 2 || std::abs(off_V) > reach_V(tuning, meter, time))) {
        slope_V_per_s_ = (volts_V - newest_V_) / dt_s;
        interval_s_ = dt_s;
        on_V_ = volts_V;
        const double uneven_V =
            std::max({meter.expected_V, meter.hand_V, line.uneven * std::abs(volts_V - newest_V_)});
        uneven_V2_ = uneven_V * uneven_V;
        weight_ = line.prior;
        readings_ = 2;
    } else if (dt_s > 0) {
        const double spread_V2 = spread_V(time) * spread_V(time);
        weight_ = std::min(weight_ + 1, line.remembers);
        uneven_V2_ += uneven_V2_ * (off_V * off_V / spread_V2 - 1) / weight_;
        uneven_V2_ = std::max(uneven_V2_, meter.expected_V * meter.expected_V);
        readings_ = std::min(readings_ + 1, line.memory);
        const double n = readings_;
        on_V_ = at(time) + 2 * (2 * n - 1) / (n * (n + 1)) * off_V;
        slope_V_per_s_ += 6 / (n * (n + 1)) * off_V / dt_s;
        interval_s_ += (dt_s - interval_s_) / n;
    }
    newest_V_ = volts_V;
    last_ = time;
    look(tuning, meter, time);
}

void Trend::look(const Tuning& tuning, const MeterAt& meter, Time time) {
    if (time - then_ < 1s) return;
    const double still_V = tuning.moving.paused * meterReach_V(tuning, meter);
    paused_ = std::abs(newest_V_ - then_V_) < still_V * toSeconds(time - then_);
    then_V_ = newest_V_;
    then_ = time;
}

} // namespace stillwire
