// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/link_watch.hpp"
#include "meters/session/poller.hpp"

#include <gtest/gtest.h>

namespace stillwire {

namespace {

MeterDescription meter() {
    MeterDescription out;
    out.traits.interval_s = 0.33;
    out.link.baud = 2400;
    return out;
}

LinkWatch opened() {
    LinkWatch watch("/dev/ttyUSB0", meter());
    watch.opened("/dev/ttyUSB0", Time(0));
    return watch;
}

Reading reading(double at_s, ReadingFlags flags = {}) {
    Reading out{.time = fromSeconds(at_s), .volts_V = 0.8, .flags = flags};
    return out;
}

bool has(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

} // namespace

TEST(LinkWatch, IsSilentWhenNothingComes) {
    LinkWatch watch = opened();
    EXPECT_EQ(watch.state(fromSeconds(1)), LinkState::opening);
    EXPECT_EQ(watch.state(fromSeconds(3)), LinkState::silent);
    const std::string says = watch.says(fromSeconds(3)).english();
    EXPECT_TRUE(has(says, "/dev/ttyUSB0")) << says;
    EXPECT_TRUE(has(says, "data-output key")) << says;
    EXPECT_TRUE(has(says, "2400 baud")) << says;
}

TEST(LinkWatch, TellsBytesThatAreNoReadings) {
    LinkWatch watch = opened();
    watch.bytesCame(fromSeconds(2));
    watch.complained("not text");
    EXPECT_EQ(watch.state(fromSeconds(3)), LinkState::silent);
    EXPECT_TRUE(has(watch.says(fromSeconds(3)).english(), "no reading: not text"));
}

TEST(LinkWatch, TellsAMeterThatFellSilent) {
    LinkWatch watch = opened();
    watch.readingCame(reading(1));
    EXPECT_EQ(watch.state(fromSeconds(2)), LinkState::live);
    EXPECT_EQ(watch.says(fromSeconds(2)).english(), "");
    EXPECT_EQ(watch.state(fromSeconds(8)), LinkState::silent);
    EXPECT_TRUE(has(watch.says(fromSeconds(8)).english(), "switched itself off"));
}

TEST(LinkWatch, TellsWhatIsWrongWithTheMeter) {
    LinkWatch watch = opened();
    const auto says = [&watch](Flag flag) {
        watch.readingCame(reading(1, flag));
        return watch.says(fromSeconds(1)).english();
    };
    EXPECT_TRUE(has(says(Flag::unit), "turn it to DC volts"));
    EXPECT_TRUE(has(says(Flag::overload), "overload"));
    EXPECT_TRUE(has(says(Flag::hold), "press the hold key"));
    EXPECT_TRUE(has(says(Flag::lowbat), "battery"));
}

TEST(LinkWatch, TellsWhyItIsNoDcVolts) {
    LinkWatch watch = opened();
    const auto says = [&watch](NotVolts because) {
        watch.readingCame(reading(1, Flag::unit), because);
        return watch.says(fromSeconds(1)).english();
    };
    EXPECT_TRUE(has(says(NotVolts::relative), "relative mode is on"));
    EXPECT_TRUE(has(says(NotVolts::alternating), "the meter shows AC"));
    EXPECT_TRUE(has(says(NotVolts::lowImpedance), "low-impedance mode pulls the signal down"));
}

TEST(LinkWatch, TellsARangeThatChangesAndOneThatHunts) {
    LinkWatch watch = opened();
    watch.readingCame(reading(12));
    std::vector<BlindSpan> blind = {{fromSeconds(10), fromSeconds(11.4), BlindCause::autorange}};
    watch.blindWas(blind, fromSeconds(12));
    EXPECT_EQ(watch.says(fromSeconds(12)).english(), "lock the meter's range: it went blind for 1.4 s");
    blind.push_back({fromSeconds(30), fromSeconds(31), BlindCause::autorange});
    blind.push_back({fromSeconds(50), fromSeconds(51), BlindCause::autorange});
    watch.readingCame(reading(51));
    watch.blindWas(blind, fromSeconds(52));
    EXPECT_EQ(watch.says(fromSeconds(52)).english(),
              "lock the meter's range: it changed 3 times in a minute and was blind for 3.4 s of it");
}

TEST(LinkWatch, TellsANumberThatStandsStill) {
    LinkWatch watch = opened();
    watch.readingCame(reading(20));
    const std::vector<BlindSpan> blind = {{fromSeconds(10), fromSeconds(20), BlindCause::frozen}};
    watch.blindWas(blind, fromSeconds(20));
    EXPECT_TRUE(has(watch.says(fromSeconds(20)).english(), "the number stands still"));
    watch.readingCame(reading(21));
    watch.blindWas(blind, fromSeconds(21)); // it moves again
    EXPECT_EQ(watch.says(fromSeconds(21)).english(), "");
}

TEST(LinkWatch, TellsACommandThatTheMeterRefuses) {
    LinkWatch watch = opened();
    watch.readingCame(reading(1));
    watch.refused("-113,\"Undefined header\"");
    EXPECT_TRUE(has(watch.says(fromSeconds(1)).english(), "refuses a command (-113,\"Undefined header\")"));
    watch.opened("/dev/ttyUSB0", fromSeconds(2));
    EXPECT_FALSE(has(watch.says(fromSeconds(2)).english(), "refuses"));
}

TEST(LinkWatch, TellsThatTheCableIsGoneAndBack) {
    LinkWatch watch = opened();
    watch.readingCame(reading(1));
    watch.lost(fromSeconds(2));
    EXPECT_EQ(watch.state(fromSeconds(2)), LinkState::lost);
    EXPECT_TRUE(has(watch.says(fromSeconds(2)).english(), "put the cable back"));
    watch.opened("/dev/ttyUSB1", fromSeconds(7));
    const std::string back = "the adapter is back as /dev/ttyUSB1 after 5.0 s; the capture went on with a gap";
    EXPECT_EQ(watch.says(fromSeconds(7.2)).english(), back); // before the meter has said anything
    watch.readingCame(reading(7.5));
    EXPECT_EQ(watch.says(fromSeconds(8)).english(), back);
    watch.readingCame(reading(19));
    EXPECT_EQ(watch.says(fromSeconds(20)).english(), "");
}

TEST(LinkWatch, TellsThatTheComputerSlept) {
    LinkWatch watch = opened();
    watch.readingCame(reading(1));
    watch.slept(3600, fromSeconds(3602));
    watch.readingCame(reading(3602.5));
    EXPECT_TRUE(has(watch.says(fromSeconds(3603)).english(), "the computer slept for 3600"));
    watch.readingCame(reading(3613));
    EXPECT_EQ(watch.says(fromSeconds(3613)).english(), "");
}

TEST(Poller, KeepsItsPaceAndWaitsForAnAnswer) {
    LinkSettings link;
    link.pollCommand = "READ?\n";
    link.pollInterval = Time(200'000);
    Poller poller(link);
    poller.restart(Time(0));
    EXPECT_TRUE(poller.shouldAsk(Time(0)));
    poller.asked(Time(0));
    EXPECT_FALSE(poller.shouldAsk(Time(400'000))); // owes an answer
    poller.answered();
    EXPECT_FALSE(poller.shouldAsk(Time(199'999)));
    EXPECT_TRUE(poller.shouldAsk(Time(200'000)));
    poller.asked(Time(230'000)); // late: the next is on the old grid, not before now
    poller.answered();
    EXPECT_EQ(poller.due(Time(230'000)), Time(400'000));
    poller.asked(Time(400'000));
    EXPECT_TRUE(poller.shouldAsk(Time(2'400'000))); // the answer is overdue: ask again
}

} // namespace stillwire
