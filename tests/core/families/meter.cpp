// SPDX-License-Identifier: GPL-3.0-or-later
// What the meter makes of the wire: mean over the aperture, noise, filter, range, rounding, stamp.
#include "core/capture/whole_seconds.hpp"
#include "tests/core/families/trace.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

namespace stillwire::families {
namespace {

struct Conversion {
    double level_V = 0, off_V = 0, noise_V = 0; // noise_V: what was added, not its sd
    int dropout = -1;
};

// The display filter on all three parts apart, so that the truth is filtered like the number.
class Filter {
public:
    explicit Filter(const Meter& meter) : meter_(meter) {}

    Conversion next(const Conversion& newest) {
        if (meter_.firstOrder > 0) {
            if (!begun_) state_ = newest;
            begun_ = true;
            const double share = meter_.firstOrder;
            state_.level_V += share * (newest.level_V - state_.level_V);
            state_.off_V += share * (newest.off_V - state_.off_V);
            state_.noise_V += share * (newest.noise_V - state_.noise_V);
            return with(newest.dropout);
        }
        last_.push_back(newest);
        if (last_.size() > static_cast<std::size_t>(meter_.meanOf)) last_.pop_front();
        state_ = {};
        int dropout = -1;
        for (const Conversion& c : last_) {
            const double share = 1 / static_cast<double>(last_.size());
            state_.level_V += share * c.level_V;
            state_.off_V += share * c.off_V;
            state_.noise_V += share * c.noise_V;
            dropout = std::max(dropout, c.dropout);
        }
        return with(dropout);
    }
    // The noise of a conversion that leaves the asked sd after the filter.
    [[nodiscard]] double noiseGain() const {
        if (meter_.firstOrder > 0) return std::sqrt((2 - meter_.firstOrder) / meter_.firstOrder);
        return std::sqrt(static_cast<double>(meter_.meanOf));
    }

private:
    [[nodiscard]] Conversion with(int dropout) const {
        Conversion shown = state_;
        shown.dropout = dropout;
        return shown;
    }
    const Meter& meter_;
    std::deque<Conversion> last_;
    Conversion state_;
    bool begun_ = false;
};

// Mean of what dropouts take from the level over one aperture.
void addDropouts(const Wire& wire, double from_s, double to_s, Dice& dice, Conversion& into, std::size_t& firstOpen) {
    const std::vector<Dropout>& all = wire.dropouts;
    while (firstOpen < all.size() && all[firstOpen].to_s <= from_s) ++firstOpen;
    for (std::size_t i = firstOpen; i < all.size() && all[i].from_s < to_s; ++i) {
        const Dropout& d = all[i];
        const double a = std::max(from_s, d.from_s), b = std::min(to_s, d.to_s);
        if (b <= a) continue;
        const double share = (b - a) / (to_s - from_s);
        double off_V = d.offset.empty() ? share * (d.pulledTo_V - wire.level.mean(a, b) - wire.drift_V(b))
                                        : d.offset.area(a, b) / (to_s - from_s);
        if (d.rough_V > 0) off_V += share * d.rough_V * dice.normal();
        // A wire that lets go ends at a rail, not beyond it.
        off_V = std::clamp(off_V, 0.001 - into.level_V - into.off_V, 4.999 - into.level_V - into.off_V);
        into.off_V += off_V;
        into.dropout = static_cast<int>(i);
    }
}

double rounded(double v_V, double count_V) {
    const double perVolt = std::round(1 / count_V);
    return std::round(v_V * perVolt) / perVolt; // divided: the double nearest to the shown decimal
}

class Ranges {
public:
    explicit Ranges(const Meter& meter) : meter_(meter) {}
    [[nodiscard]] double count_V() const { return high_ || none() ? meter_.resolution_V : meter_.resolution_V / 10; }
    // How many readings a change costs; 0: none.
    int look(double v_V, Dice& dice) {
        if (none()) return 0;
        const bool high = v_V > meter_.rangesMeet_V || (high_ && v_V > 0.95 * meter_.rangesMeet_V);
        const bool changes = begun_ && high != high_;
        high_ = high;
        begun_ = true;
        return changes ? dice.whole(1, meter_.lostMost) : 0;
    }

private:
    [[nodiscard]] bool none() const { return meter_.rangesMeet_V == 0; }
    const Meter& meter_;
    bool high_ = true, begun_ = false;
};

// A meter on a coarse clock or behind a slow port says when it was heard, not when it looked.
Time stampOf(const Meter& meter, double heard_s, double bunchEnd_s, double jitter_s) {
    switch (meter.stamps) {
    case Stamps::wholeSecond: return fromSeconds(std::floor(heard_s));
    case Stamps::bunched: return fromSeconds(bunchEnd_s);
    case Stamps::exact: break;
    }
    return fromSeconds(heard_s + jitter_s);
}

} // namespace

double TrueReading::border_V() const { return std::max({0.02, 9 * noise_V, 3.5 * count_V}); }

namespace {
// A file with whole seconds is read so.
std::vector<Reading> spread(const std::vector<Reading>& readings) {
    struct Rows final : RowSink {
        std::vector<Reading> all;
        void reading(const Reading& r) override { all.push_back(r); }
        void mark(const Mark&) override {}
    } rows;
    SecondSpreader spreader(rows, false);
    for (const Reading& r : readings) spreader.reading(r);
    spreader.finish();
    return rows.all;
}
} // namespace

void takeReadings(const Wire& wire, const Meter& meter, Dice& dice, Trace& trace) {
    Filter filter(meter);
    Ranges ranges(meter);
    std::size_t firstOpen = 0, hold = 0, gap = 0;
    Conversion shown;
    int lost = 0;
    // The meter was on before the log began, so its filter is full.
    const bool filtered = meter.meanOf > 1 || meter.firstOrder > 0;
    for (int before = 0; filtered && before < 40; ++before) {
        const double sd_V = meter.noise_counts * ranges.count_V() * filter.noiseGain();
        (void)filter.next({wire.level.at(0) + wire.drift_V(0), 0, sd_V * dice.normal(), -1});
    }
    const double start_s = meter.aperture_s + 0.003;
    const double hum = dice.between(0, 6.28);
    for (int k = 0;; ++k) {
        const double at_s = start_s + k * meter.interval_s;
        if (at_s > wire.now_s()) break;
        while (hold + 1 < wire.holds.size() && wire.holds[hold].to_s < at_s) ++hold;
        const bool louder = meter.louder != 1 && at_s >= meter.louderFrom_s;
        const double sd_V = meter.noise_counts * ranges.count_V() * (louder ? meter.louder : 1);
        if (k % meter.refresh == 0) {
            Conversion now;
            const double from_s = at_s - meter.aperture_s;
            now.level_V = wire.level.mean(from_s, at_s) + wire.drift_V(at_s);
            if (meter.hum_V > 0) now.noise_V = meter.hum_V * std::sin(hum + 6.283185307 * at_s / meter.humPeriod_s);
            addDropouts(wire, from_s, at_s, dice, now, firstOpen);
            now.noise_V += sd_V * filter.noiseGain() * (meter.heavyTails ? dice.student5() : dice.normal());
            shown = filter.next(now);
        }
        const double jitter_s = dice.between(-0.004, 0.004);
        const bool strayRow = meter.lostShare > 0 && dice.chance(meter.lostShare);
        while (gap < wire.gaps.size() && wire.gaps[gap].to_s <= at_s - meter.aperture_s) ++gap;
        const bool silent = gap < wire.gaps.size() && wire.gaps[gap].meets(at_s - meter.aperture_s, at_s);
        const double v_V = shown.level_V + shown.off_V + shown.noise_V;
        lost = std::max(lost, ranges.look(v_V, dice));
        const double bunchEnd_s = start_s + (k / meter.bunch * meter.bunch + meter.bunch - 1) * meter.interval_s;
        Reading reading;
        reading.time = stampOf(meter, at_s, bunchEnd_s, jitter_s);
        TrueReading truth;
        truth.at_s = at_s;
        truth.level_V = shown.level_V;
        truth.count_V = ranges.count_V();
        // The foot's tremor stands in the noise while its hold lasts; so does a ripple.
        const Hold& h = wire.holds[hold];
        const double tremor_V = at_s >= h.from_s && at_s - meter.aperture_s <= h.to_s ? h.tremor_V : 0;
        truth.noise_V = std::sqrt(sd_V * sd_V + tremor_V * tremor_V + 0.5 * meter.hum_V * meter.hum_V);
        const double traceable_V = 0.25 * std::max(truth.noise_V, truth.count_V);
        if (filtered && shown.dropout < 0 && std::abs(shown.off_V) > traceable_V)
            for (std::size_t i = 0; i < wire.dropouts.size() && wire.dropouts[i].from_s < at_s; ++i)
                shown.dropout = static_cast<int>(i);
        if (shown.dropout >= 0) {
            truth.off_V = shown.off_V;
            truth.dropout = shown.dropout;
        }
        if (silent || strayRow) continue;
        for (const auto& [span, flag] : wire.flagged)
            if (span.meets(at_s - meter.aperture_s, at_s)) reading.flags = flag;
        if (lost > 0) {
            --lost;
            if (!meter.lostAreRows) continue;
            reading.flags = Flag::autorange;
        } else if (reading.flags.none()) {
            reading.volts_V = rounded(v_V, truth.count_V);
        }
        trace.readings.push_back(reading);
        trace.truth.readings.push_back(truth);
    }
    if (meter.stamps == Stamps::wholeSecond) trace.readings = spread(trace.readings);
}

} // namespace stillwire::families
