// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/meter_model.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::bench {
namespace {

constexpr double kPi = 3.14159265358979323846;

double wholeMicroseconds(double t_s) { return std::round(t_s * 1e6) * 1e-6; }

// The decimal a display with this resolution shows, as the nearest double.
double quantise(double volts_V, double resolution_V) {
    const double counts = std::round(volts_V / resolution_V);
    const double perVolt = std::round(1.0 / resolution_V);
    // 0.001 is no double but 1000 is: dividing gives the double nearest to the decimal.
    const bool decimal = perVolt >= 1 && std::abs(perVolt * resolution_V - 1.0) < 1e-9;
    const double shown = decimal ? counts / perVolt : counts * resolution_V;
    return shown == 0 ? 0.0 : shown; // no minus zero
}

} // namespace

MeterModel::MeterModel(const MeterTraits& traits, const MeterQuirks& quirks, Random random)
    : quirks_(quirks), random_(random), ranges_(traits.ranges),
      interval_s_(traits.interval_s > 0 ? traits.interval_s : 0.33),
      aperture_s_(traits.aperture_s.value_or(0.3 * interval_s_)) {
    if (ranges_.empty()) ranges_.push_back({6.0, 0.001, 0.5, 2});
    quirks_.jitter_s = std::min(quirks_.jitter_s, 0.2 * interval_s_);
    // The looks of one meter never overlap.
    aperture_s_ = std::clamp(aperture_s_, 1e-4, interval_s_ - 2 * quirks_.jitter_s - 2e-6);
    for (const MeterRange& range : ranges_) {
        gain_.push_back(quirks_.accuracyUsed * random_.uniform(-1, 1) * range.accuracyPercent / 100.0);
        offset_V_.push_back(quirks_.accuracyUsed * random_.uniform(-1, 1) * range.accuracyCounts *
                            range.resolution_V);
    }
    phase_ = random_.uniform();
    locked_ = ranges_.size() == 1 || quirks_.lockedRange_V > 0;
    if (quirks_.lockedRange_V > 0) {
        while (range_ + 1 < ranges_.size() && ranges_[range_].fullScale_V < quirks_.lockedRange_V) ++range_;
    }
    start_s_ = wholeMicroseconds(random_.uniform(0, interval_s_));
    end_s_ = wholeMicroseconds(start_s_ + aperture_s_);
    first_s_ = start_s_;
}

void MeterModel::plan() {
    ++count_;
    const double at_s =
        first_s_ + static_cast<double>(count_) * interval_s_ + quirks_.jitter_s * random_.uniform(-1, 1);
    start_s_ = wholeMicroseconds(std::max(at_s, end_s_ + 1e-6));
    end_s_ = wholeMicroseconds(start_s_ + aperture_s_);
}

// Mean of the hum over the aperture: what is left of it by the well-known sin(x)/x.
double MeterModel::ripple_V() const {
    if (quirks_.ripple_V <= 0) return 0;
    const double turn = 2 * kPi * quirks_.mains_Hz;
    const double middle = turn * 0.5 * (start_s_ + end_s_) + 2 * kPi * phase_;
    const double x = 0.5 * turn * (end_s_ - start_s_);
    return quirks_.ripple_V * std::sin(middle) * std::sin(x) / x;
}

void MeterModel::blindFor(double from_s, double to_s, std::string_view cause) {
    if (!blind_.empty() && blind_.back().cause == cause && blind_.back().to_s >= from_s - 1.5 * interval_s_) {
        blind_.back().to_s = to_s;
    } else {
        blind_.push_back({from_s, to_s, cause});
    }
}

Reading MeterModel::finish(double mean_V) {
    Reading out;
    out.time = fromSeconds(end_s_ + quirks_.latency_s);
    const double from_s = start_s_, to_s = end_s_;
    const double hum_V = ripple_V();
    plan();

    const MeterRange* range = &ranges_[range_];
    const double noise_V = quirks_.noise_counts * range->resolution_V * random_.normal();
    double volts_V = (1 + gain_[range_]) * (mean_V + hum_V) + offset_V_[range_] + noise_V;
    if (to_s < darkUntil_s_) {
        out.flags |= Flag::autorange;
        return out;
    }
    const double size_V = std::abs(volts_V);
    const bool up = size_V > range->fullScale_V && range_ + 1 < ranges_.size();
    const bool down = range_ > 0 && size_V < 0.95 * ranges_[range_ - 1].fullScale_V;
    if (!locked_ && (up || down)) {
        while (range_ + 1 < ranges_.size() && size_V > ranges_[range_].fullScale_V) ++range_;
        while (range_ > 0 && size_V < 0.95 * ranges_[range_ - 1].fullScale_V) --range_;
        darkUntil_s_ = to_s + quirks_.blank_s;
        filtered_V_.reset();
        blindFor(from_s, darkUntil_s_, "autorange");
        out.flags |= Flag::autorange;
        return out;
    }
    if (size_V > range->fullScale_V + 0.5 * range->resolution_V) {
        filtered_V_.reset();
        blindFor(from_s, to_s, "overload");
        out.flags |= Flag::overload;
        return out;
    }
    filtered_V_ = filtered_V_ ? *filtered_V_ + quirks_.filter * (volts_V - *filtered_V_) : volts_V;
    out.volts_V = quantise(*filtered_V_, range->resolution_V);
    return out;
}

} // namespace stillwire::bench
