// SPDX-License-Identifier: GPL-3.0-or-later
// Two meters at once: one on a kernel terminal at the signal, one at the reference wire.
#include "core/capture/reader.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/fd_link.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"

#include <chrono>
#include <thread>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

template <class Condition> bool within(std::chrono::milliseconds limit, const Condition& holds) {
    const auto end = std::chrono::steady_clock::now() + limit;
    while (!holds()) {
        if (std::chrono::steady_clock::now() > end) return false;
        std::this_thread::sleep_for(1ms);
    }
    return true;
}

struct TwoMeters {
    KernelTty tty;
    MeterDescription signal = shippedMeter("text-line-logger"), reference = shippedMeter("lcd-segment-meter");
    int instrument = -1; // the second meter's end
    std::string path;
    std::unique_ptr<Session> session;

    explicit TwoMeters(const std::string& name) : path(capturePath(name)) {
        auto second = std::make_unique<FdLink>(instrument);
        auto started = Session::start(makeSerialLink(KernelTty::kPort, signal.link), makeDecoder(signal),
                                      headerFor(signal), {.guided = false, .capturePath = path},
                                      ReferenceMeter{std::move(second), reference.traits});
        EXPECT_TRUE(started) << started.error().text();
        if (started) session = std::move(started.value());
        std::this_thread::sleep_for(60ms); // what comes sooner might be torn
    }
    ~TwoMeters() {
        session.reset();
        if (instrument >= 0) ::close(instrument);
        std::remove(path.c_str());
    }
    TwoMeters(const TwoMeters&) = delete;
    TwoMeters& operator=(const TwoMeters&) = delete;

    // Each meter's frame, and the bench has both.
    void show(double signal_V, double reference_V) {
        const std::size_t before = session->snapshot()->findings->readings;
        const auto frame = encodeFrame(reference.frame, number(reference_V), 0.001);
        ASSERT_EQ(::send(instrument, frame.data(), frame.size(), MSG_NOSIGNAL), ssize_t(frame.size()));
        ASSERT_TRUE(tty.send(encodeFrame(signal.frame, number(signal_V), 0.001)));
        EXPECT_TRUE(within(5s, [&] { return session->snapshot()->findings->readings >= before + 2; }));
    }
};

} // namespace

TEST(SecondMeter, ItsReadingsAreFlaggedAndTheRatioIsLive) {
    TwoMeters two("two_meters");
    ASSERT_TRUE(two.session);
    for (int i = 0; i < 12; ++i) two.show(0.812, 4.96);
    const auto snapshot = two.session->snapshot();
    EXPECT_EQ(snapshot->trace.size(), 12u); // of the signal alone
    EXPECT_EQ(snapshot->lastVolts_V, 0.812);
    ASSERT_TRUE(snapshot->findings->ratio);
    EXPECT_EQ(snapshot->findings->ratio->reference_V, 4.96);
    ASSERT_TRUE(snapshot->findings->ratio->level_V);
    // Half of the allowed ground drop is assumed: (0.812 - 0.05)·5/(4.96 - 0.05).
    EXPECT_NEAR(*snapshot->findings->ratio->level_V, (0.812 - 0.05) * 5 / (4.96 - 0.05), 1e-9);
    ASSERT_TRUE(snapshot->findings->reference);
    EXPECT_NEAR(snapshot->findings->reference->level_V, 4.96, 1e-9);
    two.session->stop();
    auto capture = loadCapture(two.path);
    ASSERT_TRUE(capture) << capture.error().text();
    ASSERT_EQ(capture->readings.size(), 24u);
    int flagged = 0;
    for (const Reading& reading : capture->readings) {
        const bool ref = reading.flags.has(Flag::ref);
        flagged += ref ? 1 : 0;
        EXPECT_EQ(reading.volts_V, ref ? 4.96 : 0.812);
    }
    EXPECT_EQ(flagged, 12);
    ASSERT_TRUE(capture->header.referenceMeter);
    EXPECT_EQ(capture->header.referenceMeter->name, two.reference.traits.name);
}

TEST(SecondMeter, ADropoutTheReferenceMadeIsKnownAsSuch) {
    TwoMeters two("two_meters_sag");
    ASSERT_TRUE(two.session);
    for (int i = 0; i < 30; ++i) two.show(0.812, 4.96);
    for (int i = 0; i < 3; ++i) two.show(0.487, 2.976); // both to 60 %
    for (int i = 0; i < 10; ++i) two.show(0.812, 4.96);
    two.session->stop();
    const auto findings = two.session->snapshot()->findings;
    ASSERT_EQ(findings->excursions.size(), 1u);
    EXPECT_TRUE(findings->excursions[0].withReference);
    ASSERT_EQ(findings->referenceMoves.size(), 1u);
    EXPECT_EQ(findings->verdict.decision, Decision::checkSupply);
}

TEST(SecondMeter, GoneItIsToldAndTheSignalGoesOnWithoutAGap) {
    TwoMeters two("two_meters_gone");
    ASSERT_TRUE(two.session);
    for (int i = 0; i < 3; ++i) two.show(0.812, 4.96);
    ::close(two.instrument);
    two.instrument = -1;
    EXPECT_TRUE(within(5s, [&] { return !two.session->snapshot()->marks.empty(); }));
    EXPECT_EQ(two.session->snapshot()->marks.front().text, "note:the meter on the reference is gone");
    for (int i = 0; i < 3; ++i) ASSERT_TRUE(two.tty.send(encodeFrame(two.signal.frame, number(0.812), 0.001)));
    EXPECT_TRUE(within(5s, [&] { return two.session->snapshot()->trace.size() == 6; }));
    EXPECT_EQ(two.session->snapshot()->link, LinkState::live);
    EXPECT_NE(two.session->snapshot()->linkSays.english().find("on the reference: second meter is gone"),
              std::string::npos)
        << two.session->snapshot()->linkSays.english();
    EXPECT_TRUE(two.session->snapshot()->findings->blind.empty());
}

TEST(SecondMeter, GoesOnlyBesideAMeterOnAPort) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    int instrument = -1;
    auto started =
        Session::start(std::make_unique<ScriptLink>(std::vector<ScriptLine>{}), makeDecoder(meter), headerFor(meter),
                       {.guided = false}, ReferenceMeter{std::make_unique<FdLink>(instrument), meter.traits});
    EXPECT_FALSE(started);
    ::close(instrument);
}

} // namespace stillwire
