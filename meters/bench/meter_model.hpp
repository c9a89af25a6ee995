// SPDX-License-Identifier: GPL-3.0-or-later
// The meter: when it looks, and what it makes of the mean of what it saw.
#pragma once

#include "core/domain/reading.hpp"
#include "core/sheet/meter_traits.hpp"
#include "meters/bench/random.hpp"
#include "meters/bench/setup.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace stillwire::bench {

struct MeterBlind {
    double from_s = 0, to_s = 0;
    std::string_view cause; // "autorange" or "overload"
};

class MeterModel {
public:
    // `traits` may be partial: 0.33 s, an aperture of 0.3 intervals and one 6 V, 1 mV range are then taken.
    MeterModel(const MeterTraits& traits, const MeterQuirks& quirks, Random random);

    // The next look: [start, end), then the frame is complete at arrival. Whole microseconds.
    [[nodiscard]] double apertureStart_s() const { return start_s_; }
    [[nodiscard]] double apertureEnd_s() const { return end_s_; }
    [[nodiscard]] double aperture_s() const { return aperture_s_; }
    [[nodiscard]] double interval_s() const { return interval_s_; }

    // Mean over the aperture that just ended -> the reading, and the next look is planned.
    [[nodiscard]] Reading finish(double mean_V);

    [[nodiscard]] const std::vector<MeterBlind>& blind() const { return blind_; }
    // Drawn for this run: reading = (1 + gain) * true + offset, on the range in use.
    [[nodiscard]] double gain() const { return gain_[range_]; }
    [[nodiscard]] double offset_V() const { return offset_V_[range_]; }

private:
    void plan();
    [[nodiscard]] double ripple_V() const;
    void blindFor(double from_s, double to_s, std::string_view cause);

    MeterQuirks quirks_;
    Random random_;
    std::vector<MeterRange> ranges_;
    std::vector<double> gain_, offset_V_;
    std::vector<MeterBlind> blind_;
    double interval_s_, aperture_s_;
    double first_s_ = 0, start_s_ = 0, end_s_ = 0;
    std::int64_t count_ = 0;
    std::size_t range_ = 0;
    bool locked_ = true;
    double darkUntil_s_ = -1;
    std::optional<double> filtered_V_;
    double phase_ = 0; // of the mains, turns
};

} // namespace stillwire::bench
