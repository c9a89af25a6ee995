// SPDX-License-Identifier: GPL-3.0-or-later
// Finding a meter over a kernel terminal: an instrument sends its bits at its own rate and framing, and the terminal
// gets what a receiver with the settings made on it would read. Time passes only while the search waits for the port,
// and the instrument plays then: how busy the computer is changes nothing.
#include "meters/find/find_meter.hpp"
#include "meters/link/serial_link.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_calls.hpp"
#include "tests/support/lent_clock.hpp"
#include "tests/support/uart.hpp"

#include <chrono>
#include <functional>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

// Shipped descriptions of meters that hurry: fifty readings a second.
std::vector<MeterCandidate> candidates() {
    std::vector<MeterCandidate> out;
    for (const char* name : {"ascii-digit-meter", "lcd-segment-meter", "polled-text-meter", "scpi-bench-meter",
                             "scpi-running-meter", "text-line-logger"}) {
        out.push_back({name, shippedMeter(name)});
        out.back().description.traits.interval_s = 0.02;
    }
    return out;
}

// Plays the instrument until it goes out of scope.
class Instrument {
public:
    struct Kind {
        LinkSettings link;               // how it really sends
        std::vector<std::uint8_t> frame; // by itself; empty: only when asked
        std::string identity;            // a SCPI instrument
        bool needsLines = false;         // powered from DTR and RTS as in `link`
    };
    Instrument(KernelTty& tty, Kind kind) : tty_(tty), kind_(std::move(kind)) {
        lent::setClockSpeed(0);
        lent::state().waits = &plays_;
    }
    ~Instrument() {
        lent::state().waits = nullptr;
        lent::setClockSpeed(1);
    }
    Instrument(const Instrument&) = delete;
    Instrument& operator=(const Instrument&) = delete;
    const std::string& heard() const { return heard_; } // what it was asked

private:
    // While the search waits: until something came, or its limit is over.
    void play(int limit_ms) {
        bool came = false;
        for (int passed_ms = 0; passed_ms < limit_ms && !came; passed_ms += kTurn_ms) {
            lent::passBy(std::chrono::milliseconds(kTurn_ms));
            came = turn();
        }
    }
    bool turn() {
        const std::string asked = tty_.receiveAll();
        if (kind_.needsLines && (tty_.dtr() != kind_.link.dtr || tty_.rts() != kind_.link.rts)) return false;
        heard_ += asked;
        bool sent = !kind_.frame.empty() && send(kind_.frame);
        if (!asked.empty() && tty_.baud() == static_cast<unsigned>(kind_.link.baud)) sent = answer(asked) || sent;
        return sent;
    }
    bool answer(const std::string& question) {
        const auto has = [&question](const char* word) { return question.find(word) != std::string::npos; };
        std::string reply;
        if (!kind_.identity.empty() && has("*IDN?")) reply += kind_.identity + "\n";
        if (!kind_.identity.empty() && (has("READ?") || has("FETC?"))) reply += "+8.12000000E-01\n";
        if (kind_.identity.empty() && !kind_.link.pollCommand.empty() && has(kind_.link.pollCommand.c_str()))
            reply += "+0.812 V DC\r\n";
        return send({reply.begin(), reply.end()});
    }
    // True if anything of it came through.
    bool send(const std::vector<std::uint8_t>& bytes) {
        const Parity parity = tty_.parity() == 'O' ? Parity::odd : tty_.parity() == 'E' ? Parity::even : Parity::none;
        const LinkSettings& own = kind_.link;
        const std::vector<std::uint8_t> received =
            test::receive(bytes, {static_cast<double>(own.baud), own.bits, own.parity, own.stopBits},
                          {static_cast<double>(tty_.baud()), tty_.bits(), parity, 1});
        EXPECT_TRUE(tty_.send(received) && tty_.waitArrived());
        return !received.empty();
    }

    static constexpr int kTurn_ms = 20;
    KernelTty& tty_;
    Kind kind_;
    std::string heard_;
    const std::function<void(int)> plays_ = [this](int limit_ms) { play(limit_ms); };
};

PortFinding searchPort(bool mayAsk = true, std::stop_token stop = {}, std::vector<FindProgress>* told = nullptr) {
    const auto found = findMeters(
        {{KernelTty::kPort}, candidates(), mayAsk, 0.25}, makeSerialLink,
        [told](const FindProgress& progress) {
            if (told) told->push_back(progress);
        },
        stop);
    EXPECT_EQ(found.size(), 1u);
    return found.empty() ? PortFinding{} : found.front();
}

std::vector<std::uint8_t> frameOf(const MeterDescription& meter) {
    return encodeFrame(meter.frame, number(0.812), 0.001);
}

const char* surenessName(Sureness sureness) {
    switch (sureness) {
    case Sureness::none: return "no fit";
    case Sureness::possible: return "possible";
    case Sureness::likely: return "likely";
    case Sureness::sure: return "sure";
    }
    return "";
}

std::string names(const PortFinding& found) {
    std::string out = found.trouble;
    for (const MeterMatch& match : found.matches)
        out += match.name + " " + surenessName(match.fit.sureness) + " at " + std::to_string(match.link.baud) + " " +
               framingText(match.link) + "; ";
    return out + likenessSays(found.look).english();
}

class OwnMeter : public testing::TestWithParam<const char*> {};

} // namespace

TEST_P(OwnMeter, IsFoundAsDescribed) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter(GetParam());
    Instrument instrument(tty, {meter.link, frameOf(meter), {}, true});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name, GetParam()) << names(found);
    EXPECT_EQ(found.matches.front().fit.sureness, Sureness::sure) << names(found);
    EXPECT_TRUE(found.matches.front().asDescribed);
    ASSERT_TRUE(found.matches.front().fit.newest);
    EXPECT_EQ(found.matches.front().fit.newest->volts_V, 0.812);
}

INSTANTIATE_TEST_SUITE_P(FindMeter, OwnMeter,
                         testing::Values("text-line-logger", "lcd-segment-meter", "ascii-digit-meter"));

TEST(FindMeter, APolledMeterIsFoundByAsking) {
    KernelTty tty;
    const MeterDescription meter = shippedMeter("polled-text-meter");
    Instrument instrument(tty, {meter.link, {}, {}, true});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name, "polled-text-meter") << names(found);
    EXPECT_EQ(found.matches.front().fit.sureness, Sureness::sure) << names(found);
}

TEST(FindMeter, AnInstrumentSaysWhoItIs) {
    KernelTty tty;
    Instrument instrument(tty, {shippedMeter("scpi-bench-meter").link, {}, "NOBODY,EXAMPLE,0,1.0", false});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name.substr(0, 5), "scpi-");
    EXPECT_EQ(found.matches.front().identity, "NOBODY,EXAMPLE,0,1.0");
    EXPECT_EQ(found.matches.front().fit.sureness, Sureness::sure) << names(found);
}

TEST(FindMeter, AnInstrumentAtAnotherRateIsFound) {
    KernelTty tty;
    LinkSettings link = shippedMeter("scpi-bench-meter").link;
    link.baud = 19200;
    Instrument instrument(tty, {link, {}, "NOBODY,EXAMPLE,0,1.0", false});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().link.baud, 19200);
    EXPECT_FALSE(found.matches.front().asDescribed);
}

TEST(FindMeter, LcdFramesAtAnotherRateFitWithThatRate) {
    KernelTty tty;
    MeterDescription meter = shippedMeter("lcd-segment-meter");
    meter.link.baud = 4800;
    Instrument instrument(tty, {meter.link, frameOf(meter), {}, true});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name, "lcd-segment-meter") << names(found);
    EXPECT_EQ(found.matches.front().link.baud, 4800) << names(found);
    EXPECT_FALSE(found.matches.front().asDescribed);
}

TEST(FindMeter, SevenBitTextIsFoundByItsParity) {
    KernelTty tty;
    MeterDescription meter = shippedMeter("text-line-logger");
    meter.link.baud = 1200;
    meter.link.bits = 7;
    meter.link.parity = Parity::even;
    Instrument instrument(tty, {meter.link, frameOf(meter), {}, true});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name, "text-line-logger") << names(found);
    EXPECT_EQ(found.matches.front().link.baud, 1200) << names(found);
    EXPECT_EQ(framingText(found.matches.front().link), "7E1") << names(found);
}

TEST(FindMeter, ALeadThatWantsOtherLinesIsFound) {
    KernelTty tty;
    MeterDescription meter = shippedMeter("lcd-segment-meter");
    meter.link.dtr = false;
    meter.link.rts = true;
    Instrument instrument(tty, {meter.link, frameOf(meter), {}, true});
    const PortFinding found = searchPort();
    ASSERT_FALSE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.matches.front().name, "lcd-segment-meter") << names(found);
    EXPECT_FALSE(found.matches.front().link.dtr);
    EXPECT_TRUE(found.matches.front().link.rts);
}

TEST(FindMeter, AStrangersBytesAreShownAsWhatTheyLookLike) {
    KernelTty tty;
    LinkSettings link;
    link.baud = 38400;
    const std::string line = "time is up and nothing to count\r\n";
    Instrument instrument(tty, {link, {line.begin(), line.end()}, {}, false});
    const PortFinding found = searchPort();
    EXPECT_TRUE(found.matches.empty()) << names(found);
    EXPECT_EQ(found.heardWith.baud, 38400) << names(found);
    EXPECT_EQ(found.look.shape, ByteShape::textLines);
    EXPECT_EQ(found.look.line, "time is up and nothing to count");
    EXPECT_FALSE(found.heard.bytes.empty());
}

// A silent port: asked the harmless questions only, and never set up as something it is not.
TEST(FindMeter, ASilentPortGetsNoStartUpCommands) {
    KernelTty tty;
    Instrument instrument(tty, {{}, {}, {}, false});
    std::vector<FindProgress> told;
    const PortFinding found = searchPort(true, {}, &told);
    EXPECT_TRUE(found.matches.empty());
    EXPECT_EQ(found.look.shape, ByteShape::nothing);
    EXPECT_EQ(found.trouble, "");
    for (std::size_t i = 1; i < told.size(); ++i) EXPECT_GE(told[i].step, told[i - 1].step);
    EXPECT_LE(told.back().step, told.back().of);
    const std::string& asked = instrument.heard();
    EXPECT_NE(asked.find("*IDN?"), std::string::npos) << asked;
    for (const char* never : {"CONF", "INIT", "READ?", "*CLS"})
        EXPECT_EQ(asked.find(never), std::string::npos) << asked;
}

TEST(FindMeter, AsksNothingUnlessItMay) {
    KernelTty tty;
    Instrument instrument(tty, {{}, {}, {}, false});
    const PortFinding found = searchPort(false);
    EXPECT_TRUE(found.matches.empty());
    EXPECT_EQ(instrument.heard(), "");
    EXPECT_EQ(lent::state().written, 0u);
}

TEST(FindMeter, StopsWhenTold) {
    KernelTty tty;
    Instrument instrument(tty, {{}, {}, {}, false});
    std::stop_source source;
    int steps = 0;
    const auto found = findMeters(
        {{KernelTty::kPort, KernelTty::kPort}, candidates(), true, 60}, makeSerialLink,
        [&](const FindProgress& progress) {
            steps = progress.step;
            source.request_stop();
        },
        source.get_token());
    EXPECT_EQ(steps, 1);
    EXPECT_EQ(found.size(), 1u);
}

// An adapter that does not do every setting.
class Refusing : public Link {
public:
    Status open() override { return Error{.where = "port", .what = "the port refuses it", .mend = "use another"}; }
    int descriptor() const override { return -1; }
    LinkEvent read(std::span<std::uint8_t>) override { return {.kind = LinkEvent::Kind::lost, .arrived = Time(0)}; }
    Status write(std::span<const std::uint8_t>) override { return Done{}; }
    Time now() const override { return Time(0); }
    Time nextDue() const override { return Time(-1); }
    std::string name() const override { return "port"; }
};

TEST(FindMeter, GoesOnAfterASettingThatTheAdapterRefuses) {
    const MeterDescription meter = shippedMeter("text-line-logger");
    KernelTty tty;
    Instrument instrument(tty, {meter.link, frameOf(meter), {}, false});
    int refused = 0;
    const LinkMaker maker = [&](const std::string& port, const LinkSettings& link) -> std::unique_ptr<Link> {
        if (link.baud == meter.link.baud && link.bits == meter.link.bits && link.parity == meter.link.parity)
            return makeSerialLink(port, link);
        ++refused;
        return std::make_unique<Refusing>();
    };
    const auto found =
        findMeters({{KernelTty::kPort}, candidates(), true, 0.25}, maker, [](const FindProgress&) {}, {});
    ASSERT_EQ(found.size(), 1u);
    EXPECT_GT(refused, 0);
    EXPECT_EQ(found.front().trouble, "");
    ASSERT_FALSE(found.front().matches.empty());
    EXPECT_EQ(found.front().matches.front().name, "text-line-logger");
    const auto none = findMeters(
        {{KernelTty::kPort}, candidates(), true, 0.25},
        [](const std::string&, const LinkSettings&) { return std::make_unique<Refusing>(); },
        [](const FindProgress&) {}, {});
    EXPECT_NE(none.front().trouble.find("the port refuses it"), std::string::npos);
}

TEST(FindMeter, SaysWhyAPortDidNotOpen) {
    const auto found =
        findMeters({{"/dev/ttyNOSUCH7"}, candidates(), true, 0.25}, makeSerialLink, [](const FindProgress&) {}, {});
    ASSERT_EQ(found.size(), 1u);
    EXPECT_NE(found.front().trouble.find("there is no such port"), std::string::npos);
}

} // namespace stillwire
