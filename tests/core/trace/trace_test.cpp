// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trace/trace.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

std::vector<TracePoint> randomPoints(std::size_t n, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> volts(-1, 6);
    std::vector<TracePoint> points;
    Time time{0};
    for (std::size_t i = 0; i < n; ++i) {
        time += Time(static_cast<std::int64_t>(random() % 5) * 100'000);
        points.push_back({time, random() % 10 == 0 ? kNan : volts(random)});
    }
    return points;
}

TraceExtremes naive(const std::vector<TracePoint>& points, std::size_t count, Time from, Time to) {
    TraceExtremes all;
    for (std::size_t i = 0; i < count; ++i) {
        const TracePoint& p = points[i];
        if (p.time < from || p.time >= to || std::isnan(p.volts_V)) continue;
        all.min_V = all.count == 0 ? p.volts_V : std::min(all.min_V, p.volts_V);
        all.max_V = all.count == 0 ? p.volts_V : std::max(all.max_V, p.volts_V);
        ++all.count;
    }
    return all;
}

} // namespace

TEST(Trace, EmptyHasNothing) {
    const TraceSnapshot empty = Trace().snapshot();
    EXPECT_TRUE(empty.empty());
    EXPECT_EQ(empty.firstAtOrAfter(Time(0)), 0U);
    EXPECT_EQ(empty.extremes(Time(0), Time(10), 3).size(), 3U);
    EXPECT_TRUE(TraceSnapshot().extremes(Time(0), Time(10), 0).empty());
}

TEST(Trace, AgreesWithTheNaiveWayAtEverySize) {
    const auto points = randomPoints(70'000, 7);
    Trace trace;
    std::mt19937_64 random(8);
    std::size_t appended = 0;
    for (const std::size_t size : std::initializer_list<std::size_t>{1, 15, 16, 17, 255, 256, 257, 4095, 4096, 4097,
                                                                     65535, 65536, 65537, 70000}) {
        for (; appended < size; ++appended) trace.append(points[appended]);
        const TraceSnapshot taken = trace.snapshot();
        ASSERT_EQ(taken.size(), size);
        const std::int64_t last = points[size - 1].time.count();
        for (int round = 0; round < 8; ++round) {
            const Time from(static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(last + 2)) - 1);
            const Time to = from + Time(static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(last + 2)));
            const std::int64_t n = 1 + static_cast<std::int64_t>(random() % 7);
            const auto slices = taken.extremes(from, to, static_cast<std::size_t>(n));
            const std::int64_t span = (to - from).count();
            for (std::int64_t i = 0; i < n && span > 0; ++i) {
                const auto expected = naive(points, size, from + Time(span * i / n), from + Time(span * (i + 1) / n));
                const auto& got = slices[static_cast<std::size_t>(i)];
                ASSERT_EQ(got.count, expected.count) << size << " " << from.count() << " " << to.count() << " " << i;
                ASSERT_EQ(got.min_V, expected.min_V);
                ASSERT_EQ(got.max_V, expected.max_V);
            }
            const std::size_t first = taken.firstAtOrAfter(from);
            EXPECT_TRUE(first == size || points[first].time >= from);
            EXPECT_TRUE(first == 0 || points[first - 1].time < from);
        }
    }
}

TEST(Trace, CrossesFromOneLeafToTheNext) {
    Trace trace;
    const std::size_t n = (std::size_t{1} << 20) + 100;
    for (std::size_t i = 0; i < n; ++i) {
        trace.append({Time(static_cast<std::int64_t>(i)), i == 700'000 ? -3.0 : (i == n - 1 ? 9.0 : 1.0)});
    }
    const TraceSnapshot taken = trace.snapshot();
    const auto all = taken.extremes(Time(0), Time(static_cast<std::int64_t>(n)), 1).front();
    EXPECT_EQ(all.min_V, -3.0);
    EXPECT_EQ(all.max_V, 9.0);
    EXPECT_EQ(all.count, n);
    EXPECT_EQ(taken[n - 1].volts_V, 9.0);
    EXPECT_EQ(taken[700'000].volts_V, -3.0);
}

TEST(Trace, ASnapshotNeverChangesAndOutlivesItsTrace) {
    TraceSnapshot taken;
    {
        Trace trace;
        for (int i = 0; i < 20; ++i) trace.append({Time(i), 1.0});
        taken = trace.snapshot();
        for (int i = 20; i < 10'000; ++i) trace.append({Time(i), 5.0});
        EXPECT_EQ(trace.size(), 10'000U);
    }
    EXPECT_EQ(taken.size(), 20U);
    const auto all = taken.extremes(Time(0), Time(100'000), 1).front();
    EXPECT_EQ(all.max_V, 1.0);
    EXPECT_EQ(all.count, 20U);
}

TEST(Trace, ManySlicesOverALongSpanDoNotOverflow) {
    Trace trace;
    trace.append({Time(0), 1.0});
    trace.append({Time(100'000'000'000'000'000), 2.0});
    const auto slices = trace.snapshot().extremes(Time(0), Time(100'000'000'000'000'001), 4000);
    EXPECT_EQ(slices.front().count, 1U);
    EXPECT_EQ(slices.back().max_V, 2.0);
}

TEST(Trace, OneWriterAndReadersAtOnce) {
    Trace trace;
    constexpr int kPoints = 200'000;
    std::atomic<bool> done{false};
    std::atomic<int> wrong{0};
    const auto reader = [&] {
        while (!done) {
            const TraceSnapshot taken = trace.snapshot();
            if (taken.empty()) continue;
            const auto n = static_cast<std::int64_t>(taken.size());
            // Point i is i volts at i microseconds: the extremes of any span are its ends.
            const auto slices = taken.extremes(Time(n / 3), Time(n), 5);
            std::size_t counted = 0;
            for (const auto& slice : slices) counted += slice.count;
            if (counted != static_cast<std::size_t>(n - n / 3)) ++wrong;
            if (slices.back().max_V != static_cast<double>(n - 1)) ++wrong;
            if (taken[static_cast<std::size_t>(n / 2)].volts_V != static_cast<double>(n / 2)) ++wrong;
        }
    };
    std::thread one(reader), two(reader);
    for (int i = 0; i < kPoints; ++i) trace.append({Time(i), static_cast<double>(i)});
    done = true;
    one.join();
    two.join();
    EXPECT_EQ(wrong, 0);
}

} // namespace stillwire
