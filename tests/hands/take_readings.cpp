// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/take_readings.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {
namespace {

constexpr double kFine_s = 0.004; // the scene is looked at this often within an aperture

double mean_V(Wires& wires, double from_s, double to_s) {
    const int parts = std::max(4, static_cast<int>(std::ceil((to_s - from_s) / kFine_s)));
    double sum_V = 0;
    for (int i = 0; i < parts; ++i) sum_V += wires.tip_V(from_s + (to_s - from_s) * (i + 0.5) / parts);
    return sum_V / parts;
}

double rounded(double v_V, double count_V) {
    const double perVolt = std::round(1 / count_V);
    return std::round(v_V * perVolt) / perVolt; // divided: the double nearest to the shown decimal
}

// Which range it is on; a change blinds it.
class Ranger {
public:
    explicit Ranger(const Meter& meter) : meter_(meter), range_(&meter.ranges.back()) {}

    bool blindAt(double at_s, double v_V) {
        const Range* wanted = &meter_.rangeFor(v_V);
        const bool down = wanted < range_;
        // It goes down a little later than up, or it would flutter where the ranges meet.
        if (down && std::abs(v_V) > 0.95 * wanted->fullScale_V) wanted = range_;
        if (begun_ && wanted != range_ && at_s >= blindUntil_s_) blindUntil_s_ = at_s + meter_.deadTime_s;
        if (at_s >= blindUntil_s_ || !begun_ || wanted != range_) range_ = wanted;
        begun_ = true;
        return at_s < blindUntil_s_;
    }
    [[nodiscard]] const Range& range() const { return *range_; }

private:
    const Meter& meter_;
    const Range* range_;
    bool begun_ = false;
    double blindUntil_s_ = 0;
};

} // namespace

std::vector<Reading> takeReadings(const Scene& scene, const Meter& meter, Dice& dice) {
    Wires wires(scene);
    Ranger ranger(meter);
    std::vector<Reading> all;
    const double start_s = meter.aperture_s + dice.between(0, meter.interval_s);
    const double late_s = dice.between(0.005, 0.03); // from the aperture's end to the last byte
    double shown_V = 0;
    for (int k = 0;; ++k) {
        const double end_s = start_s + k * meter.interval_s;
        if (end_s + late_s > scene.end_s) break;
        const double seen_V = mean_V(wires, end_s - meter.aperture_s, end_s);
        shown_V = k == 0 ? seen_V : shown_V + meter.follow * (seen_V - shown_V);
        const bool blind = ranger.blindAt(end_s, shown_V);
        const Range& range = ranger.range();
        const double noise_V = meter.noise_V(range) * dice.normal();
        const double jitter_s = dice.between(-0.002, 0.002);
        const auto says = [&](const Span& s) { return end_s >= s.from_s && end_s - meter.aperture_s < s.to_s; };
        if (std::any_of(scene.silent.begin(), scene.silent.end(), says) || (blind && !meter.deadRows)) continue;
        Reading reading;
        reading.time = fromSeconds(end_s + late_s + jitter_s);
        if (blind)
            reading.flags = Flag::autorange;
        else
            reading.volts_V = rounded(range.gain * shown_V + range.offset_V + noise_V, range.resolution_V);
        all.push_back(reading);
    }
    return all;
}

} // namespace stillwire::hands
