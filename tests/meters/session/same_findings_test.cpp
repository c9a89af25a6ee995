// SPDX-License-Identifier: GPL-3.0-or-later
// Live, replay, analysis of the file and import of its columns: the same findings to the last digit. The live session
// is led on the simulated meter, over every kind of frame.
#include "core/capture/reader.hpp"
#include "core/examination.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/findings_text.hpp"
#include "tests/support/source_folder.hpp"

#include <chrono>
#include <fstream>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;
using test::findingsText;

// Runs a session to its end; its last findings.
std::string lastFindings(Result<std::unique_ptr<Session>> session) {
    EXPECT_TRUE(session) << session.error().text();
    if (!session) return "";
    const auto limit = std::chrono::steady_clock::now() + 120s; // a busy machine; not what is measured
    while (session.value()->running() && std::chrono::steady_clock::now() < limit) std::this_thread::sleep_for(2ms);
    EXPECT_FALSE(session.value()->running());
    session.value()->stop();
    return findingsText(*session.value()->snapshot()->findings);
}

ExaminationSetup setupOf(const Capture& capture) {
    auto setup = examinationSetup(capture.header, {}, capture.readings, "capture");
    EXPECT_TRUE(setup) << setup.error().text();
    return *setup;
}

std::string examined(const Capture& capture, const ExaminationSetup& setup, bool marks) {
    Examination examination(setup);
    for (const Capture::Row& row : capture.rows) {
        if (!row.isMark)
            examination.push(capture.readings[row.index]);
        else if (marks)
            examination.push(capture.marks[row.index]);
    }
    return findingsText(examination.findings());
}

std::string replayed(const Capture& capture, const std::string& path) {
    return lastFindings(Session::replay(capture, path, {.replaySpeed = 0}));
}

// The findings of a session that is led on the simulated meter, and records.
std::string ledLive(const MeterDescription& meter, const CaptureHeader& header, const std::string& path) {
    const std::string scriptPath = test::sourceFile("resources/bench/worn-cold.toml");
    auto script = parseBenchScript(fileText(scriptPath), scriptPath);
    EXPECT_TRUE(script) << script.error().text();
    auto simulated = simulatedMeter(*script, *header.sheet, meter, 21, 0, {});
    EXPECT_TRUE(simulated) << simulated.error().text();
    SessionOptions options{.guided = true, .capturePath = path, .replaySpeed = 0, .seed = 5};
    options.hand = simulated->hand;
    const std::string live = lastFindings(Session::start({std::move(simulated->link), meter}, header, options));
    EXPECT_NE(live.find("excursion"), std::string::npos) << "nothing to compare";
    return live;
}

class SameFindings : public testing::TestWithParam<const char*> {};

TEST_P(SameFindings, LiveReplayedAnalysedAndImported) {
    const MeterDescription meter = shippedMeter(GetParam());
    const std::string path = capturePath("same-findings");
    const std::string live = ledLive(meter, headerFor(meter), path);
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    const ExaminationSetup setup = setupOf(*capture);
    EXPECT_EQ(examined(*capture, setup, true), live) << "analysed";
    EXPECT_EQ(replayed(*capture, path), live) << "replayed";

    // Without marks: the two columns as another program might write them, from its own start.
    const std::string foreignPath = capturePath("foreign");
    Capture shifted = *capture;
    const Time first = shifted.readings.front().time;
    {
        std::ofstream foreign(foreignPath);
        foreign << "Elapsed (s);Voltage (V);flags\n";
        for (Reading& reading : shifted.readings) {
            char row[64];
            std::snprintf(row, sizeof row, "%.6f;%.10g;\n", toSeconds(reading.time) + 100, reading.volts_V);
            if (reading.hasNumber()) foreign << row;
            reading.time -= first;
        }
    }
    std::erase_if(shifted.rows,
                  [&](const Capture::Row& row) { return !row.isMark && !shifted.readings[row.index].hasNumber(); });
    auto imported = loadCapture(foreignPath);
    ASSERT_TRUE(imported) << imported.error().text();
    EXPECT_TRUE(imported->summary.imported);
    EXPECT_EQ(examined(*imported, setup, false), examined(shifted, setup, false)) << "imported";
    std::remove(path.c_str());
    std::remove(foreignPath.c_str());
}
INSTANTIATE_TEST_SUITE_P(Meters, SameFindings,
                         testing::Values("text-line-logger", "scpi-bench-meter", "lcd-segment-meter",
                                         "ascii-digit-meter", "polled-text-meter"),
                         [](const auto& meter) {
                             std::string name = meter.param;
                             std::erase(name, '-');
                             return name;
                         });

// What a description leaves out, the first readings teach: live too, where they are still to come.
struct HalfDescribed {
    const char* name;
    const char* meter;
};
class SameFindingsOfAHalfDescribedMeter : public testing::TestWithParam<HalfDescribed> {};

TEST_P(SameFindingsOfAHalfDescribedMeter, LiveReplayedAndAnalysed) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    auto described = parseMeterTraits(GetParam().meter, "half.toml");
    ASSERT_TRUE(described) << described.error().text();
    CaptureHeader header = headerFor(meter);
    header.meter = *described;
    const std::string path = capturePath(GetParam().name);
    const std::string live = ledLive(meter, header, path);
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_GT(capture->readings.size(), kTeachingReadings);
    EXPECT_EQ(examined(*capture, setupOf(*capture), true), live) << "analysed";
    EXPECT_EQ(replayed(*capture, path), live) << "replayed";
    std::remove(path.c_str());
}
INSTANTIATE_TEST_SUITE_P(
    Meters, SameFindingsOfAHalfDescribedMeter,
    testing::Values(HalfDescribed{"NoRanges", "name = \"Half\"\ninterval_s = 0.33\naperture_s = 0.1\n"},
                    HalfDescribed{"NoInterval", "name = \"Half\"\n[[range]]\nfull_scale_V = 6.0\n"
                                                "resolution_V = 0.001\n"},
                    HalfDescribed{"OnlyALink", "name = \"Half\"\n[link]\nbaud = 2400\n"}),
    [](const auto& half) { return std::string(half.param.name); });

// Fewer readings than teach, and no end of a step: what came is all there is to learn from.
TEST(SameFindingsOfAHalfDescribedMeter, AShortRecordingToo) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    CaptureHeader header = headerFor(meter);
    header.meter = *parseMeterTraits("name = \"Half\"\n", "half.toml");
    std::vector<ScriptLine> script;
    for (int i = 0; i < 60; ++i)
        script.push_back(
            {.at = Time(250'000LL * (i + 1)),
             .bytes = encodeFrame(meter.frame, number(i % 20 == 19 ? 0.31 : 0.81 + 0.01 * (i % 2)), 0.001)});
    const std::string path = capturePath("short");
    const std::string live =
        lastFindings(Session::start({std::make_unique<ScriptLink>(std::move(script)), meter}, header,
                                    {.guided = false, .capturePath = path, .replaySpeed = 0, .seed = 1}));
    auto capture = loadCapture(path);
    ASSERT_TRUE(capture) << capture.error().text();
    EXPECT_EQ(capture->readings.size(), 60U);
    EXPECT_EQ(setupOf(*capture).meter.interval_s, 0.25);
    EXPECT_EQ(examined(*capture, setupOf(*capture), true), live) << "analysed";
    EXPECT_EQ(replayed(*capture, path), live) << "replayed";
    std::remove(path.c_str());
}

} // namespace
} // namespace stillwire
