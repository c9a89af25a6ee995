// SPDX-License-Identifier: GPL-3.0-or-later
// Two meters at once, each on a kernel terminal of its own: one at the signal, one at the reference wire.
#include "core/capture/reader.hpp"
#include "tests/support/tty_run.hpp"

#include <array>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

struct TwoMeters {
    KernelTty tty;
    SecondTty second;
    MeterDescription signal = shippedMeter("text-line-logger"), reference = shippedMeter("lcd-segment-meter");
    TtyRun run;

    explicit TwoMeters(const std::string& name)
        : run(signal, name, MeterPort{makeSerialLink(SecondTty::kPort, reference.link), reference}) {}

    // Each meter's frame, and the bench has both.
    void show(double signal_V, const Reading& shown) {
        const std::size_t before = run.now()->findings->readings;
        ASSERT_TRUE(second.send(encodeFrame(reference.frame, shown, 0.001)));
        ASSERT_TRUE(tty.send(encodeFrame(signal.frame, number(signal_V), 0.001)));
        EXPECT_TRUE(within(30s, [&] { return run.now()->findings->readings >= before + 2; }));
    }
    void show(double signal_V, double reference_V) { show(signal_V, number(reference_V)); }
};

} // namespace

TEST(SecondMeter, ItsReadingsAreFlaggedAndTheRatioIsLive) {
    TwoMeters two("two_meters");
    ASSERT_TRUE(two.run.session);
    for (int i = 0; i < 12; ++i) two.show(0.812, 4.96);
    const auto snapshot = two.run.now();
    EXPECT_EQ(snapshot->trace.size(), 12u); // of the signal alone
    EXPECT_EQ(snapshot->lastVolts_V, 0.812);
    ASSERT_TRUE(snapshot->findings->ratio);
    EXPECT_EQ(snapshot->findings->ratio->reference_V, 4.96);
    ASSERT_TRUE(snapshot->findings->ratio->level_V);
    // Half of the allowed ground drop is assumed: (0.812 - 0.05)·5/(4.96 - 0.05).
    EXPECT_NEAR(*snapshot->findings->ratio->level_V, (0.812 - 0.05) * 5 / (4.96 - 0.05), 1e-9);
    ASSERT_TRUE(snapshot->findings->reference);
    EXPECT_NEAR(snapshot->findings->reference->level_V, 4.96, 1e-9);
    EXPECT_TRUE(blindAsShown(snapshot->findings->referenceBlind).empty());
    two.run.session->stop();
    auto capture = loadCapture(two.run.path);
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
    ASSERT_TRUE(two.run.session);
    for (int i = 0; i < 30; ++i) two.show(0.812, 4.96);
    for (int again = 0; again < 2; ++again) {               // one is none
        for (int i = 0; i < 3; ++i) two.show(0.487, 2.976); // both to 60 %
        for (int i = 0; i < 10; ++i) two.show(0.812, 4.96);
    }
    two.run.session->stop();
    const auto findings = two.run.now()->findings;
    ASSERT_EQ(findings->excursions.size(), 2u);
    EXPECT_TRUE(findings->excursions[0].withReference);
    ASSERT_EQ(findings->referenceMoves.size(), 2u);
    EXPECT_EQ(findings->verdict.decision, Decision::checkSupply);
}

// What its display shows then is no reference, and looks like a sag to whoever takes it for one.
TEST(SecondMeter, HoldOverloadAndAnotherFunctionAreBlindAndSaidWithTheMend) {
    struct Trouble {
        Flag flag;
        double shows_V;
        BlindCause cause;
        const char* mend;
    };
    const std::array<Trouble, 3> troubles{
        {{Flag::hold, 2.96, BlindCause::hold, "on the reference: hold is on, so the number stands still"},
         {Flag::overload, std::nan(""), BlindCause::overload, "on the reference: the meter shows overload"},
         {Flag::unit, std::nan(""), BlindCause::unit, "on the reference: the meter does not show DC volts"}}};
    TwoMeters two("two_meters_blind");
    ASSERT_TRUE(two.run.session);
    std::size_t spans = 0;
    for (const Trouble& trouble : troubles) {
        for (int i = 0; i < 12; ++i) two.show(0.812, 4.96);
        Reading shown = number(trouble.shows_V);
        shown.flags = trouble.flag;
        for (int i = 0; i < 3; ++i) two.show(0.812, shown);
        EXPECT_TRUE(two.run.says(trouble.mend)) << two.run.now()->linkSays.english();
        two.show(0.812, 4.96);
        const auto blind = [&] { return blindAsShown(two.run.now()->findings->referenceBlind); };
        EXPECT_TRUE(within(30s, [&] { return blind().size() == spans + 1; }));
        ASSERT_EQ(blind().size(), ++spans);
        EXPECT_EQ(blind().back().cause, trouble.cause);
    }
    two.run.session->stop();
    const auto findings = two.run.now()->findings;
    EXPECT_TRUE(findings->referenceMoves.empty());
    EXPECT_TRUE(blindAsShown(findings->blind).empty()); // the signal was seen all the while
    ASSERT_TRUE(findings->reference);
    EXPECT_NEAR(findings->reference->lowest_V, 4.96, 1e-9);
}

TEST(SecondMeter, WhatBothHaveToSayIsSaid) {
    TwoMeters two("two_meters_both");
    ASSERT_TRUE(two.run.session);
    Reading held = number(4.96);
    held.flags = Flag::hold;
    ASSERT_TRUE(two.second.send(encodeFrame(two.reference.frame, held, 0.001)));
    ASSERT_TRUE(two.tty.send("1.234 kOhm\r\n"));
    EXPECT_TRUE(two.run.says("turn it to DC volts, relative mode off; on the reference: hold is on"))
        << two.run.now()->linkSays.english();
}

TEST(SecondMeter, GoneItIsToldAndTheSignalGoesOnWithoutAGap) {
    TwoMeters two("two_meters_gone");
    ASSERT_TRUE(two.run.session);
    for (int i = 0; i < 3; ++i) two.show(0.812, 4.96);
    two.second.closeSlave();
    EXPECT_TRUE(within(30s, [&] { return !two.run.now()->marks.empty(); }));
    EXPECT_EQ(two.run.now()->marks.front().text(), "note:the meter on the reference is gone");
    for (int i = 0; i < 3; ++i) ASSERT_TRUE(two.tty.send(encodeFrame(two.signal.frame, number(0.812), 0.001)));
    EXPECT_TRUE(two.run.sees(6));
    EXPECT_EQ(two.run.now()->link, LinkState::live);
    EXPECT_TRUE(two.run.says(std::string("on the reference: ") + SecondTty::kPort + " is "))
        << two.run.now()->linkSays.english();
    for (const Mark& mark : two.run.now()->marks) EXPECT_FALSE(mark.as<GapMark>());
}

TEST(SecondMeter, GoesOnlyBesideAMeterOnAnotherPort) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    const auto refused = [&](std::unique_ptr<Link> signal, const char* second) {
        auto started = Session::start({std::move(signal), meter}, headerFor(meter), {.guided = false},
                                      MeterPort{makeSerialLink(second, meter.link), meter});
        return started ? std::string() : started.error().text();
    };
    const KernelTty tty;
    const SecondTty second;
    EXPECT_NE(refused(std::make_unique<ScriptLink>(std::vector<ScriptLine>{}), SecondTty::kPort)
                  .find("a second meter goes only beside a meter on a port"),
              std::string::npos);
    EXPECT_NE(refused(makeSerialLink(KernelTty::kPort, meter.link), KernelTty::kPort)
                  .find("both meters are on the same port; choose another port"),
              std::string::npos);
}

} // namespace stillwire
