// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/dip_detector.hpp"

#include <vector>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

struct Dip {
    int first, end;
    double residual;
};

std::vector<Dip> dipsIn(const std::vector<double>& samples, double reference, double threshold) {
    DipDetector detector;
    std::vector<Dip> dips;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        switch (detector.push(samples[i] - reference, reference - threshold)) {
        case DipDetector::Event::began: dips.push_back({static_cast<int>(i), -1, 0}); break;
        case DipDetector::Event::ended: dips.back().end = static_cast<int>(i); break;
        default: break;
        }
        if (detector.inside()) dips.back().residual = reference + detector.extreme_V();
    }
    return dips;
}

const std::vector<double> kDips{1000, 990, 905, 900, 899,  700, 400, 700, 900,
                                910,  919, 920, 950, 1000, 890, 915, 915, 930};

// Own construction in integer millivolts from the begin, end, hysteresis and residual logic of IEC 61000-4-30
// (voltage dip): reference 1000, threshold 900, hysteresis 20.
TEST(DipDetector, AgreesWithTheConstructedDips) {
    const std::vector<Dip> dips = dipsIn(kDips, 1000, 900);
    ASSERT_EQ(dips.size(), 2U);
    EXPECT_EQ(dips[0].first, 4);
    EXPECT_EQ(dips[0].end, 11);
    EXPECT_EQ(dips[0].residual, 400);
    EXPECT_EQ(dips[1].first, 14);
    EXPECT_EQ(dips[1].end, 17);
    EXPECT_EQ(dips[1].residual, 890);
}

TEST(DipDetector, SeesSwellsTheSameWay) {
    std::vector<double> upsideDown;
    for (const double v : kDips) upsideDown.push_back(2000 - v);
    DipDetector detector;
    int began = 0;
    for (const double v : upsideDown)
        if (detector.push(v - 1000, 100) == DipDetector::Event::began) {
            ++began;
            EXPECT_EQ(detector.direction(), Direction::up);
        }
    EXPECT_EQ(began, 2);
}

TEST(DipDetector, ADipInADipIsOneDip) {
    EXPECT_EQ(dipsIn({1000, 800, 300, 850, 200, 850, 1000}, 1000, 900).size(), 1U);
}

} // namespace
} // namespace stillwire
