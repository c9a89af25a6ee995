// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/reader.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/within.hpp"

#include <chrono>
#include <cmath>
#include <csignal>
#include <sys/resource.h>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

std::vector<ScriptLine> steady(int count, double volts_V, const MeterDescription& meter) {
    std::vector<ScriptLine> out;
    for (int i = 0; i < count; ++i)
        out.push_back({Time(330'000LL * (i + 1)), LinkEvent::Kind::bytes,
                       encodeFrame(meter.frame, number(volts_V + 0.001 * (i % 3)), 0.001)});
    return out;
}

// Runs to the end of the script.
std::shared_ptr<const SessionSnapshot> play(std::vector<ScriptLine> script, const MeterDescription& meter,
                                            SessionOptions options) {
    auto session =
        Session::start({std::make_unique<ScriptLink>(std::move(script)), meter}, headerFor(meter), options);
    EXPECT_TRUE(session) << session.error().text();
    if (!session) return nullptr;
    while (session.value()->running()) std::this_thread::sleep_for(1ms);
    return session.value()->snapshot();
}

} // namespace

TEST(Session, RecordsExactlyWhatItShows) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    SessionOptions options{.guided = false, .capturePath = capturePath("shows"), .replaySpeed = 1, .seed = 1};
    const auto snapshot = play(steady(200, 0.812, meter), meter, options);
    ASSERT_TRUE(snapshot);
    EXPECT_EQ(snapshot->link, LinkState::ended);
    EXPECT_EQ(snapshot->recorderSays.english(), "");
    EXPECT_EQ(snapshot->garbageBytes, 0u);
    const auto capture = loadCapture(options.capturePath);
    ASSERT_TRUE(capture) << capture.error().text();
    const auto& readings = capture.value().readings;
    ASSERT_EQ(readings.size(), 200u);
    ASSERT_EQ(snapshot->trace.size(), 200u);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        EXPECT_EQ(readings[i].time, snapshot->trace[i].time);
        EXPECT_EQ(readings[i].volts_V, snapshot->trace[i].volts_V);
    }
    EXPECT_EQ(snapshot->findings->readings, 200u);
    std::remove(options.capturePath.c_str());
}

TEST(Session, ReplaysToTheSameFindings) {
    const MeterDescription meter = shippedMeter("lcd-segment-meter");
    SessionOptions options{.guided = true, .capturePath = capturePath("replays"), .replaySpeed = 0, .seed = 3};
    options.hand = [](const Prompt&, Time now) {
        return now.count() % 5 == 0 ? std::vector{Command::next} : std::vector<Command>{};
    };
    auto script = steady(400, 0.812, meter);
    for (int i = 100; i < 103; ++i)
        script[static_cast<std::size_t>(i)].bytes = encodeFrame(meter.frame, number(0.1), 0.001);
    const auto live = play(script, meter, options);
    ASSERT_TRUE(live);
    EXPECT_FALSE(live->marks.empty());
    auto replay = loadCapture(options.capturePath);
    ASSERT_TRUE(replay) << replay.error().text();
    auto session = Session::replay(std::move(*replay), options.capturePath, {.guided = true, .replaySpeed = 0});
    ASSERT_TRUE(session) << session.error().text();
    ASSERT_TRUE(within(20s, [&] { return !session.value()->running(); }));
    const auto again = session.value()->snapshot();
    EXPECT_FALSE(again->guided);
    ASSERT_EQ(again->marks.size(), live->marks.size());
    EXPECT_EQ(again->findings->readings, live->findings->readings);
    EXPECT_EQ(again->findings->duration, live->findings->duration);
    EXPECT_EQ(again->findings->phases.size(), live->findings->phases.size());
    ASSERT_EQ(again->findings->excursions.size(), live->findings->excursions.size());
    for (std::size_t i = 0; i < again->findings->excursions.size(); ++i) {
        EXPECT_EQ(again->findings->excursions[i].from, live->findings->excursions[i].from);
        EXPECT_EQ(again->findings->excursions[i].extreme_V, live->findings->excursions[i].extreme_V);
    }
    EXPECT_EQ(again->findings->verdict.decision, live->findings->verdict.decision);
    std::remove(options.capturePath.c_str());
}

TEST(Session, IsTheSameEveryTimeOnALinkWithItsOwnClock) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    std::string first;
    for (int run = 0; run < 3; ++run) {
        SessionOptions options{.guided = true, .capturePath = capturePath("same"), .replaySpeed = 0, .seed = 7};
        options.hand = [](const Prompt& prompt, Time) {
            return prompt.asked ? std::vector<Command>{} : std::vector{Command::next};
        };
        play(steady(300, 0.812, meter), meter, options);
        const std::string text = fileText(options.capturePath);
        EXPECT_NE(text.find("step:"), std::string::npos);
        if (run == 0)
            first = text;
        else
            EXPECT_EQ(text, first);
        std::remove(options.capturePath.c_str());
    }
}

TEST(Session, ClosesTheStepThatIsOpenWhenItStops) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    SessionOptions options{.guided = true, .capturePath = capturePath("stops"), .replaySpeed = 0, .seed = 1};
    const auto snapshot = play(steady(20, 0.812, meter), meter, options);
    ASSERT_TRUE(snapshot);
    ASSERT_FALSE(snapshot->marks.empty());
    EXPECT_EQ(snapshot->marks.back().text(), "step:end");
    std::remove(options.capturePath.c_str());
}

TEST(Session, PlaysACaptureAtASpeed) {
    Capture capture;
    for (int i = 0; i < 50; ++i) {
        Reading reading = number(0.812);
        reading.time = Time(100'000LL * i);
        capture.rows.push_back({false, capture.readings.size()});
        capture.readings.push_back(reading);
    }
    capture.header = headerFor(shippedMeter("text-line-logger"));
    const auto before = std::chrono::steady_clock::now();
    auto session =
        Session::replay(std::move(capture), "demo.csv", {.guided = false, .replaySpeed = 20}); // 4.9 s at 20 times
    ASSERT_TRUE(session);
    ASSERT_TRUE(within(5s, [&] { return !session.value()->running(); }));
    const auto took = std::chrono::steady_clock::now() - before;
    EXPECT_GE(took, 240ms);
    EXPECT_LE(took, 2s);
    EXPECT_EQ(session.value()->snapshot()->trace.size(), 50u);
}

TEST(Session, PutsAGapWhereTheLinkWasLost) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    auto script = steady(20, 0.812, meter);
    script[10].kind = LinkEvent::Kind::lost;
    script[10].bytes.clear();
    script[11].kind = LinkEvent::Kind::lost;
    script[11].bytes.clear();
    SessionOptions options{.guided = false, .capturePath = capturePath("gap"), .replaySpeed = 0, .seed = 1};
    const auto snapshot = play(script, meter, options);
    ASSERT_TRUE(snapshot);
    ASSERT_EQ(snapshot->marks.size(), 1u); // once
    EXPECT_EQ(snapshot->marks[0].text(), "gap");
    EXPECT_EQ(snapshot->marks[0].time, Time(330'000LL * 11));
    EXPECT_EQ(snapshot->trace.size(), 18u);
    std::remove(options.capturePath.c_str());
}

TEST(Session, NeedsASheetAMeterAndANewFile) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    const auto start = [&meter](CaptureHeader header, SessionOptions options) {
        return Session::start({std::make_unique<ScriptLink>(std::vector<ScriptLine>{}), meter}, std::move(header),
                              std::move(options));
    };
    CaptureHeader noSheet = headerFor(meter), noMeter = headerFor(meter);
    noSheet.sheet.reset();
    noMeter.meter.reset();
    EXPECT_FALSE(start(noSheet, {}));
    EXPECT_FALSE(start(noMeter, {}));
    SessionOptions options{.guided = false, .capturePath = capturePath("exists"), .replaySpeed = 0, .seed = 1};
    std::ofstream(options.capturePath) << "mine";
    EXPECT_FALSE(start(headerFor(meter), options));
    EXPECT_EQ(fileText(options.capturePath), "mine");
    std::remove(options.capturePath.c_str());
}

// A disk that is full (a file-size limit answers alike: the write fails): said, nothing lost, and mended by itself.
TEST(Session, GoesOnInMemoryWhenTheDiskIsFull) {
    std::signal(SIGXFSZ, SIG_IGN);
    const MeterDescription meter = shippedMeter("text-line-logger");
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    std::vector<ScriptLine> script = steady(2000, 0.812, meter);
    SessionOptions options{.guided = false, .capturePath = capturePath("full"), .replaySpeed = 0, .seed = 1};
    const rlimit small{8000, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &small);
    auto session = Session::start({std::make_unique<ScriptLink>(script), meter}, headerFor(meter), options);
    ASSERT_TRUE(session) << session.error().text();
    EXPECT_TRUE(within(10s, [&] { return !session.value()->running(); }));
    const auto snapshot = session.value()->snapshot();
    EXPECT_NE(snapshot->recorderSays.english(), "");
    EXPECT_GT(snapshot->pendingBytes, 0u);
    EXPECT_EQ(snapshot->trace.size(), 2000u);
    setrlimit(RLIMIT_FSIZE, &before);
    const auto capture = loadCapture(options.capturePath); // what is there is whole
    ASSERT_TRUE(capture) << capture.error().text();
    EXPECT_GT(capture.value().readings.size(), 50u);
    std::remove(options.capturePath.c_str());
}

} // namespace stillwire
