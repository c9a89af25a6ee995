// SPDX-License-Identifier: GPL-3.0-or-later
// One wire that is searched reading by reading, with what is settled written down.
#pragma once

#include "core/domain/timeline.hpp"
#include "core/explain/search.hpp"

#include <string>
#include <vector>

namespace stillwire::test {

struct SettledOnes final : SettledReadings {
    struct One {
        Reading reading;
        int context = 0;
        Segment segment; // as it was when this was settled
        bool begins = false;
    };
    void readings(const Reading* first, std::size_t count, int context, const Segment& segment,
                  bool begins) override {
        for (std::size_t i = 0; i < count; ++i) all.push_back({first[i], context, segment, begins && i == 0});
        ++calls;
    }
    std::vector<One> all;
    int calls = 0;
};

inline Expectation expecting(ExpectedMotion motion, double interval_s = 0.33, const Tuning& tuning = {}) {
    Context place;
    place.motion = motion;
    return expectationAt(place, Time(0), tuning, interval_s);
}

class WireOf {
public:
    explicit WireOf(ExpectedMotion motion, double interval_s = 0.33, double aperture_s = 0.1,
                    const Tuning& tuning = {}, std::vector<Window> windows = {{0.7, 0.95}, {3.9, 4.3}})
        : search({{"", interval_s, aperture_s, {{6.0, 0.001, 0.5, 2}}, ""}, 5.0, std::move(windows), tuning}),
          expected(expecting(motion, interval_s, tuning)), interval_s_(interval_s) {}

    void show(double volts_V) {
        pushed.push_back({now, volts_V, {}});
        search.push(pushed.back(), context, expected, settled);
        now += fromSeconds(interval_s_);
    }
    void show(double volts_V, int count) {
        for (int i = 0; i < count; ++i) show(volts_V);
    }
    void showAll(const std::vector<double>& volts_V) {
        for (const double v : volts_V) show(v);
    }
    [[nodiscard]] Doing doing() const { return search.now().doing; }
    // All of them, the rest as the cheapest explanation has it.
    [[nodiscard]] std::vector<SettledOnes::One> told() const {
        SettledOnes all = settled;
        search.tellRest(all);
        return all.all;
    }
    // A letter for each reading: held, away, moving, off the line; a capital begins a segment.
    [[nodiscard]] std::string words() const {
        std::string text;
        for (const SettledOnes::One& one : told())
            text += (one.begins ? "HAMO" : "hamo")[static_cast<std::size_t>(one.segment.doing)];
        return text;
    }
    // The last of them.
    [[nodiscard]] std::string words(std::size_t count) const {
        const std::string all = words();
        return all.substr(all.size() - count);
    }

    Search search;
    Expectation expected;
    SettledOnes settled;
    std::vector<Reading> pushed;
    Time now{0};
    int context = 0;

private:
    double interval_s_;
};

} // namespace stillwire::test
