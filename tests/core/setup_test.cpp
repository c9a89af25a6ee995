// SPDX-License-Identifier: GPL-3.0-or-later
// Header, what is given over it and first readings: what each says, and which goes before which.
#include "core/setup.hpp"
#include "tests/support/pedal_sheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

CaptureHeader headerWithSheet() {
    CaptureHeader header;
    auto sheet = parseSheet(test::kPedalSheet, "sheet.toml");
    EXPECT_TRUE(sheet);
    header.sheet = *sheet;
    return header;
}

MeterTraits meterOf(const std::string& keys) {
    auto meter = parseMeterTraits("name = \"Some meter\"\n" + keys, "meter.toml");
    EXPECT_TRUE(meter) << meter.error().text();
    return *meter;
}

constexpr const char* kRange = "[[range]]\nfull_scale_V = 6.0\nresolution_V = 0.001\n";
constexpr const char* kTwoASecond = "interval_s = 0.5\n[[range]]\nfull_scale_V = 6.0\nresolution_V = 0.001\n";

// A reading every `interval_s`, counted in 10 mV.
std::vector<Reading> readings(std::size_t count, double interval_s) {
    std::vector<Reading> out(count);
    for (std::size_t i = 0; i < count; ++i) {
        out[i].time = fromSeconds(static_cast<double>(i) * interval_s);
        out[i].volts_V = i % 2 == 0 ? 0.82 : 0.83;
    }
    return out;
}

ExaminationSetup setupOf(const CaptureHeader& header, const SetupOverrides& given = {},
                         const std::vector<Reading>& first = readings(50, 0.25)) {
    auto setup = examinationSetup(header, given, first, "monday.csv");
    EXPECT_TRUE(setup) << setup.error().text();
    return *setup;
}

} // namespace

TEST(Setup, ADescribedMeterNeedsNoReading) {
    CaptureHeader header = headerWithSheet();
    header.meter = meterOf(kTwoASecond);
    header.probe = ProbeSide::controllerSide;
    header.black = BlackLead::sensorGround;
    header.referenceMeter = header.meter;
    header.assumed = {"something of the rows"};
    const ExaminationSetup setup = setupOf(header);
    EXPECT_EQ(setup.meter.interval_s, 0.5);
    EXPECT_TRUE(setup.meterKnown);
    EXPECT_FALSE(setup.meterLearnt);
    EXPECT_EQ(setup.probe, ProbeSide::controllerSide);
    EXPECT_EQ(setup.black, BlackLead::sensorGround);
    EXPECT_EQ(setup.sheet.name, header.sheet->name);
    ASSERT_TRUE(setup.referenceMeter);
    ASSERT_EQ(setup.assumed.size(), 1U);
}

TEST(Setup, NoMeterIsLearntAndItsAccuracyAssumed) {
    const ExaminationSetup setup = setupOf(headerWithSheet());
    EXPECT_EQ(setup.meter.interval_s, 0.25);
    ASSERT_EQ(setup.meter.ranges.size(), 1U);
    EXPECT_EQ(setup.meter.ranges.front().resolution_V, 0.01);
    EXPECT_FALSE(setup.meterKnown);
    EXPECT_TRUE(setup.meterLearnt);
}

TEST(Setup, WhatADescriptionLeavesOutIsLearnt) {
    CaptureHeader header = headerWithSheet();
    header.meter = meterOf("interval_s = 0.5\n");
    const ExaminationSetup noRanges = setupOf(header);
    EXPECT_EQ(noRanges.meter.interval_s, 0.5);
    EXPECT_EQ(noRanges.meter.ranges.front().resolution_V, 0.01);
    EXPECT_FALSE(noRanges.meterKnown);
    header.meter = meterOf(kRange);
    const ExaminationSetup noInterval = setupOf(header);
    EXPECT_EQ(noInterval.meter.interval_s, 0.25);
    EXPECT_EQ(noInterval.meter.ranges.front().resolution_V, 0.001);
    EXPECT_TRUE(noInterval.meterKnown);
    EXPECT_TRUE(noInterval.meterLearnt);
    header.meter = meterOf("[link]\nbaud = 9600\n");
    EXPECT_EQ(setupOf(header).meter.interval_s, 0.25);
    EXPECT_FALSE(setupOf(header).meterKnown);
}

TEST(Setup, WhatIsGivenGoesBeforeTheHeader) {
    CaptureHeader header = headerWithSheet();
    header.meter = meterOf("[link]\nbaud = 9600\n");
    SetupOverrides given{.sheet = header.sheet, .meter = meterOf(kTwoASecond)};
    given.sheet->name = "another";
    const ExaminationSetup setup = setupOf(header, given);
    EXPECT_EQ(setup.sheet.name, "another");
    EXPECT_EQ(setup.meter.interval_s, 0.5);
    EXPECT_TRUE(setup.meterKnown);
    header.sheet.reset();
    EXPECT_EQ(setupOf(header, given).sheet.name, "another");
}

TEST(Setup, OnlySoManyReadingsTeach) {
    std::vector<Reading> first = readings(kTeachingReadings, 0.25);
    for (const Reading& late : readings(3 * kTeachingReadings, 0.5)) {
        first.push_back(late);
        first.back().time += fromSeconds(1000);
        first.back().volts_V += 0.001;
    }
    EXPECT_EQ(setupOf(headerWithSheet(), {}, first).meter.interval_s, 0.25);
    EXPECT_EQ(setupOf(headerWithSheet(), {}, first).meter.ranges.front().resolution_V, 0.01);
}

TEST(Setup, ASecondMetersReadingsTeachNothingOfTheFirst) {
    std::vector<Reading> first;
    for (const Reading& reading : readings(50, 0.5)) {
        first.push_back(reading);
        first.push_back(reading);
        first.back().flags |= Flag::ref;
        first.back().volts_V = 4.9871;
    }
    EXPECT_EQ(setupOf(headerWithSheet(), {}, first).meter.interval_s, 0.5);
    EXPECT_EQ(setupOf(headerWithSheet(), {}, first).meter.ranges.front().resolution_V, 0.01);
}

TEST(Setup, WithoutReadingsTheMeterIsStillToBeLearnt) {
    const ExaminationSetup setup = setupOf(headerWithSheet(), {}, {});
    EXPECT_EQ(setup.meter.interval_s, 0);
    EXPECT_TRUE(setup.meterLearnt);
}

TEST(Setup, NoSheetAtAllIsAnErrorThatNamesFileAndRemedy) {
    const auto setup = examinationSetup({}, {}, {}, "monday.csv");
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.error().where, "monday.csv");
    EXPECT_THAT(setup.error().text(), testing::HasSubstr("--sheet"));
}

} // namespace stillwire
