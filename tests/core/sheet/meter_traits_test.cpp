// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/meter_traits.hpp"

#include <gtest/gtest.h>

namespace stillwire {

TEST(MeterTraits, ReadsWhatTheJudgementNeedsAndSortsTheRanges) {
    auto meter = parseMeterTraits(
        "format = 1\nname = \"Text-line logger\"\ninterval_s = 0.33\naperture_s = 0.10\n"
        "[[range]]\nfull_scale_V = 60.0\nresolution_V = 0.01\naccuracy_percent = 0.7\naccuracy_counts = 3\n"
        "[[range]]\nfull_scale_V = 6.0\nresolution_V = 0.001\n"
        "[link]\nbaud = \"not a number\"\n[frame]\nkind = 5\n",
        "logger.toml");
    ASSERT_TRUE(meter.ok()) << meter.error().text();
    EXPECT_EQ(meter->interval_s, 0.33);
    EXPECT_EQ(meter->aperture_s, 0.10);
    ASSERT_EQ(meter->ranges.size(), 2U);
    EXPECT_EQ(meter->ranges[0].fullScale_V, 6.0);
    EXPECT_EQ(meter->ranges[0].accuracyPercent, 1.0);
    EXPECT_EQ(meter->ranges[1].accuracyCounts, 3);
    EXPECT_EQ(meter->rangeFor(-5.9).fullScale_V, 6.0);
    EXPECT_EQ(meter->rangeFor(6.1).fullScale_V, 60.0);
    EXPECT_EQ(meter->rangeFor(900).fullScale_V, 60.0);
}

TEST(MeterTraits, NeedsNoMoreThanAName) {
    auto meter = parseMeterTraits("name = \"bare\"\n", "bare.toml");
    ASSERT_TRUE(meter.ok()) << meter.error().text();
    EXPECT_EQ(meter->interval_s, 0);
    EXPECT_FALSE(meter->aperture_s.has_value());
    EXPECT_TRUE(meter->ranges.empty());
}

TEST(MeterTraits, RefusesWhatMakesNoSense) {
    const auto line = [](const std::string& text) {
        const auto meter = parseMeterTraits("name = \"m\"\n" + text, "m.toml");
        return meter.ok() ? -1 : meter.error().line;
    };
    EXPECT_EQ(line("format = 2\n"), 2);
    EXPECT_EQ(line("interval_s = 0\n"), 2);
    EXPECT_EQ(line("interval_s = -1\n"), 2);
    EXPECT_EQ(line("aperture_s = nan\n"), 2);
    EXPECT_EQ(line("range = 5\n"), 2);
    EXPECT_EQ(line("[[range]]\nfull_scale_V = 6\n"), 2);
    EXPECT_EQ(line("[[range]]\nfull_scale_V = 6\nresolution_V = 7\n"), 4);
    EXPECT_EQ(line("[[range]]\nfull_scale_V = 6\nresolution_V = 0.001\naccuracy_percent = -1\n"), 5);
    EXPECT_FALSE(parseMeterTraits("interval_s = 1\n", "m.toml").ok());
}

} // namespace stillwire
