// SPDX-License-Identifier: GPL-3.0-or-later
// What is said to a SCPI instrument over a kernel terminal, in which order, and what its silence leads to. The clock
// stands still but where time has to pass, so that a slow answer of a busy computer is none of the instrument's.
// Error numbers and texts: SCPI-1999 by secondary texts (-113 undefined header, -420 query unterminated from memory).
#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/lent_clock.hpp"
#include "tests/support/within.hpp"

#include <chrono>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

// The instrument's ear: one line at a time.
class Ear {
public:
    explicit Ear(KernelTty& tty) : tty_(tty) {}
    std::string line() {
        std::size_t end = std::string::npos;
        while ((end = heard_.find('\n')) == std::string::npos) {
            const std::string more = tty_.receive(30'000);
            if (more.empty()) return "silence";
            heard_ += more;
        }
        std::string out = heard_.substr(0, end);
        heard_.erase(0, end + 1);
        return out;
    }

private:
    KernelTty& tty_;
    std::string heard_;
};

class ScpiTalk : public testing::Test {
protected:
    ScpiTalk() { lent::setClockSpeed(0); }
    ~ScpiTalk() override { lent::setClockSpeed(1); }

    void answer(const std::string& text) { ASSERT_TRUE(tty.send(text) && tty.waitTaken()); }
    void letPass(Time time) {
        ASSERT_TRUE(tty.waitIdle());
        lent::passBy(time);
    }
    // A session on it, and the commands that every such meter begins with are heard.
    void begin(const MeterDescription& meter) {
        auto started = Session::start({makeSerialLink(KernelTty::kPort, meter.link), meter}, headerFor(meter),
                                      {.guided = false});
        ASSERT_TRUE(started) << started.error().text();
        session = std::move(started.value());
        for (const char* command : {"*CLS", "CONF:VOLT:DC 10"}) EXPECT_EQ(ear.line(), command);
    }
    [[nodiscard]] bool sees(std::size_t readings) const {
        return within(30s, [&] { return session->snapshot()->trace.size() == readings; });
    }

    KernelTty tty;
    Ear ear{tty};
    std::unique_ptr<Session> session;
};

} // namespace

TEST_F(ScpiTalk, AsksWhoItIsReadsTheErrorQueueAndTakesItsLeave) {
    MeterDescription meter = shippedMeter("scpi-bench-meter");
    meter.link.leaveCommands = {"*CLS\n"};
    ASSERT_NO_FATAL_FAILURE(begin(meter));
    EXPECT_EQ(ear.line(), "*IDN?");
    answer("NOBODY,EXAMPLE,0,1.0\n");
    EXPECT_EQ(ear.line(), "SYST:ERR?");
    answer("-113,\"Undefined header\"\n");
    EXPECT_EQ(ear.line(), "SYST:ERR?"); // there may be more
    answer("0,\"No error\"\n");
    EXPECT_EQ(ear.line(), "READ?");
    answer("+8.12000000E-01\n");
    letPass(200ms);
    EXPECT_EQ(ear.line(), "READ?"); // one-shot: asked again for each
    EXPECT_TRUE(sees(1));
    EXPECT_NE(session->snapshot()->linkSays.english().find("-113,\"Undefined header\""), std::string::npos)
        << session->snapshot()->linkSays.english();
    EXPECT_EQ(session->snapshot()->garbageBytes, 0u);
    session->stop();
    EXPECT_EQ(ear.line(), "*CLS");
}

TEST_F(ScpiTalk, AMeterThatRunsIsStartedOnceAndAskedForItsLastReading) {
    ASSERT_NO_FATAL_FAILURE(begin(shippedMeter("scpi-running-meter")));
    EXPECT_EQ(ear.line(), "INIT:CONT ON");
    EXPECT_EQ(ear.line(), "*IDN?");
    answer("NOBODY,EXAMPLE,0,1.0\n");
    EXPECT_EQ(ear.line(), "SYST:ERR?");
    answer("+0,\"No error\"\n");
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(ear.line(), "FETC?");
        answer("+8.12000000E-01\n");
        letPass(200ms);
    }
    EXPECT_TRUE(sees(3));
    EXPECT_EQ(session->snapshot()->linkSays, "");
    session->stop();
    std::string last = ear.line();
    while (last == "FETC?") last = ear.line();
    EXPECT_EQ(last, "INIT:CONT OFF");
}

// A question nobody answers is let go; a poll nobody answers is asked about, then asked again.
TEST_F(ScpiTalk, GoesOnAfterATimeout) {
    ASSERT_NO_FATAL_FAILURE(begin(shippedMeter("scpi-bench-meter")));
    for (const char* unanswered : {"*IDN?", "SYST:ERR?", "READ?"}) {
        EXPECT_EQ(ear.line(), unanswered);
        letPass(2s);
    }
    EXPECT_EQ(ear.line(), "SYST:ERR?"); // why?
    answer("-420,\"Query UNTERMINATED\"\n");
    EXPECT_EQ(ear.line(), "SYST:ERR?");
    answer("0,\"No error\"\n");
    EXPECT_EQ(ear.line(), "READ?");
    answer("+8.12000000E-01\n");
    letPass(100ms);
    EXPECT_TRUE(sees(1));
    session->stop();
}

} // namespace stillwire
