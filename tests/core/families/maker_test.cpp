// SPDX-License-Identifier: GPL-3.0-or-later
// The makers keep their word: what is called true is what was made, whoever asks.
#include "tests/core/families/families.hpp"
#include "tests/core/families/told.hpp"
#include "tests/support/long_run.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>

namespace stillwire::families {
namespace {

std::uint64_t seedsEach() { return static_cast<std::uint64_t>(test::scaled(4, 60)); }

template <typename Look> void eachTrace(Look look) {
    for (const Family& family : families())
        for (std::uint64_t seed = 1; seed <= seedsEach(); ++seed) {
            SCOPED_TRACE(std::string(family.name) + " seed " + std::to_string(seed));
            look(family, make(family, seed, true));
        }
}

TEST(FamilyMaker, NamesAreDifferent) {
    std::set<std::string> names;
    for (const Family& family : families()) EXPECT_TRUE(names.insert(family.name).second) << family.name;
}

TEST(FamilyMaker, ASeedMeansOneTraceWhateverTheWindows) {
    eachTrace([](const Family& family, const Trace& trace) {
        const Trace again = make(family, trace.seed, false);
        ASSERT_EQ(trace.readings.size(), again.readings.size());
        for (std::size_t i = 0; i < trace.readings.size(); ++i) {
            ASSERT_EQ(trace.readings[i].time, again.readings[i].time);
            ASSERT_EQ(trace.readings[i].flags, again.readings[i].flags);
            if (trace.readings[i].hasNumber()) {
                ASSERT_EQ(trace.readings[i].volts_V, again.readings[i].volts_V);
            }
        }
        EXPECT_EQ(trace.meterToml, again.meterToml);
    });
}

TEST(FamilyMaker, TimesNeverGoBack) {
    eachTrace([](const Family&, const Trace& trace) {
        EXPECT_TRUE(std::is_sorted(trace.readings.begin(), trace.readings.end(),
                                   [](const Reading& a, const Reading& b) { return a.time < b.time; }));
    });
}

// What is shown is the true level, the dropout's share and noise of the stated size, and nothing else.
TEST(FamilyMaker, LevelsAndOffsReproduceTheReadings) {
    eachTrace([](const Family&, const Trace& trace) {
        double squares = 0, sum = 0, count = 0;
        for (std::size_t i = 0; i < trace.readings.size(); ++i) {
            if (!trace.readings[i].hasNumber()) continue;
            const TrueReading& r = trace.truth.readings[i];
            const double sd_V = std::sqrt(r.noise_V * r.noise_V + r.count_V * r.count_V / 12);
            const double left = (trace.readings[i].volts_V - r.level_V - r.off_V) / sd_V;
            ASSERT_LT(std::abs(left), trace.meter.heavyTails ? 40 : 7) << "reading " << i;
            squares += left * left;
            sum += left;
            count += 1;
        }
        ASSERT_GT(count, 20);
        // A number that hardly moves is rounded the same way each time, and a filter makes noise that drags on.
        if (trace.meter.noise_counts >= 0.4 && trace.meter.meanOf == 1 && trace.meter.firstOrder == 0) {
            EXPECT_LT(std::abs(sum / count), 0.1 + 6 / std::sqrt(count / trace.meter.refresh));
        }
        EXPECT_LT(squares / count, trace.meter.noise_counts >= 0.4 ? 1.35 + 5 / std::sqrt(count) : 3.1);
    });
}

TEST(FamilyMaker, WhatIsClearIsTouchedAndWhatIsUntouchedIsNotOff) {
    eachTrace([](const Family&, const Trace& trace) {
        for (std::size_t i = 0; i < trace.readings.size(); ++i) {
            const TrueReading& r = trace.truth.readings[i];
            if (r.required) {
                ASSERT_TRUE(r.clear);
            }
            if (r.clear) {
                ASSERT_TRUE(r.touched() && trace.readings[i].hasNumber());
            }
            if (r.clear) {
                ASSERT_GE(std::abs(r.off_V), std::max({0.02, 9 * r.noise_V, 3.5 * r.count_V}));
            }
            if (!r.touched()) {
                ASSERT_EQ(r.off_V, 0);
            }
        }
    });
}

TEST(FamilyMaker, WindowsLieOnTheLevelsOrOffThem) {
    eachTrace([](const Family& family, const Trace& on) {
        const ExaminationSetup onSetup = setupFor(on), offSetup = setupFor(make(family, on.seed, false));
        for (const Hold& hold : on.truth.holds) {
            const auto inside = [&](const ExaminationSetup& setup) {
                return std::any_of(setup.sheet.positions.begin(), setup.sheet.positions.end(),
                                   [&](const Position& p) { return p.window.contains(hold.level_V); });
            };
            EXPECT_EQ(inside(onSetup), !family.windowsAlwaysOff) << hold.level_V;
            EXPECT_FALSE(inside(offSetup)) << hold.level_V;
        }
    });
}

// The exact mean of the maker against plain summing.
TEST(FamilyMaker, AnApertureIsTheMeanOfTheWire) {
    Dice dice("aperture", 1);
    for (int run = 0; run < 20; ++run) {
        Wire wire(dice.between(1, 4));
        wire.hold(3);
        wire.move(dice.between(1, 4), dice.between(0, 2));
        wire.hold(10);
        const double from_s = dice.between(6, 7), lasts_s = dice.between(0.02, 1.5),
                     depth_V = dice.between(-0.9, 0.9);
        wire.dropout(from_s, lasts_s, depth_V, dice.between(0, 0.3));
        const Curve offset = wire.dropouts[0].offset;
        Meter meter;
        meter.interval_s = dice.between(0.1, 0.5);
        meter.aperture_s = meter.interval_s * dice.between(0.4, 1);
        meter.resolution_V = 1e-6;
        meter.noise_counts = 0;
        const Trace trace = record(wire, meter, dice);
        for (std::size_t i = 0; i < trace.readings.size(); ++i) {
            double sum_V = 0;
            constexpr int kParts = 4000;
            for (int k = 0; k < kParts; ++k) {
                const double t = trace.truth.readings[i].at_s - meter.aperture_s * (k + 0.5) / kParts;
                const bool inside = t >= offset.from_s() && t < offset.to_s();
                sum_V += wire.level.at(t) + (inside ? offset.at(t) : 0);
            }
            ASSERT_NEAR(trace.readings[i].volts_V, sum_V / kParts, 1e-3) << "reading " << i;
        }
    }
}

} // namespace
} // namespace stillwire::families
