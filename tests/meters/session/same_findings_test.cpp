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

ExaminationSetup setupOf(const CaptureHeader& header, const MeterTraits& meter) {
    return {*header.sheet, meter, true, header.probe, header.black};
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

class SameFindings : public testing::TestWithParam<const char*> {};

TEST_P(SameFindings, LiveReplayedAnalysedAndImported) {
    const MeterDescription meter = shippedMeter(GetParam());
    const std::string path = test::sourceFile("resources/bench/worn-cold.toml");
    auto script = parseBenchScript(fileText(path), path);
    ASSERT_TRUE(script) << script.error().text();
    const CaptureHeader header = headerFor(meter);
    auto simulated = simulatedMeter(*script, *header.sheet, meter, 21, 0, {});
    ASSERT_TRUE(simulated) << simulated.error().text();
    SessionOptions options{.guided = true, .capturePath = capturePath("same-findings"), .replaySpeed = 0, .seed = 5};
    options.hand = simulated->hand;
    const std::string live = lastFindings(Session::start({std::move(simulated->link), meter}, header, options));
    ASSERT_NE(live.find("excursion"), std::string::npos) << "nothing to compare";

    auto capture = loadCapture(options.capturePath);
    ASSERT_TRUE(capture) << capture.error().text();
    const ExaminationSetup setup = setupOf(capture->header, meter.traits);
    EXPECT_EQ(examined(*capture, setup, true), live) << "analysed";

    EXPECT_EQ(lastFindings(Session::replay(*capture, options.capturePath, {.replaySpeed = 0})), live) << "replayed";

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
    std::remove(options.capturePath.c_str());
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

} // namespace
} // namespace stillwire
