// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/domain/mark.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

// As people, the procedure and other programs write them.
const std::string kWritten[] = {"step:wiggle-shaft",
                                "step:end",
                                "pose:left",
                                "pose:section-2/left",
                                "position:released",
                                "position:",
                                "key:on",
                                "key:off",
                                "skip:lift",
                                "undo:sweep",
                                "turn:+1",
                                "turn:-2",
                                "turn:+0",
                                "turn:+0.5",
                                "probe:sensor-side",
                                "probe:controller-side",
                                "arm:on-stop",
                                "arm:off-stop",
                                "arm:held",
                                "arm:free",
                                "gap",
                                "note:a, \"b\"\nc: d",
                                "note:"};

TEST(Mark, EveryKindIsWrittenAsItWasRead) {
    std::vector<bool> seen(std::variant_size_v<MarkContent>, false);
    for (const std::string& text : kWritten) {
        const MarkContent content = parseMark(text);
        seen[content.index()] = true;
        EXPECT_FALSE(std::holds_alternative<UnknownMark>(content)) << text;
        EXPECT_EQ(writeMark(content), text);
    }
    for (std::size_t kind = 1; kind < seen.size(); ++kind) EXPECT_TRUE(seen[kind]) << kind;
}

TEST(Mark, EveryStepIsOpenedSkippedAndUndoneByItsName) {
    for (const StepTraits& t : kStepTable) {
        const std::string name(t.name);
        EXPECT_TRUE(Mark(Time(0), "step:" + name).opens(t.step)) << name;
        EXPECT_EQ(writeMark(parseMark("skip:" + name)), "skip:" + name);
        EXPECT_EQ(std::get<UndoMark>(parseMark("undo:" + name)).step, t.step);
    }
}

TEST(Mark, WhatIsNotKnownIsKeptVerbatimAndMeansNothing) {
    for (const char* text :
         {"", ":", "step", "step:", "step:dance", "Step:end", " step:end", "key:", "key:maybe", "gap:", "skip:all",
          "undo:", "arm:on", "probe:left", "weather:rain", "pose", "\xff\xfe"}) {
        const Mark mark(Time(0), text);
        EXPECT_TRUE(mark.as<UnknownMark>()) << text;
        EXPECT_EQ(mark.text(), text);
        EXPECT_EQ(writeMark(mark.content()), text);
    }
}

TEST(Mark, KeepsTheTextItWasReadFromWhereAnotherWouldMeanTheSame) {
    const Mark mark(Time(0), "turn:+01.50");
    EXPECT_EQ(mark.text(), "turn:+01.50");
    EXPECT_EQ(mark.as<TurnMark>()->turns, 1.5);
}

TEST(Mark, ATurnOfNoSensibleSizeIsATurnOfUnknownSize) {
    for (const char* text : {"turn:", "turn:far", "turn:+1001", "turn:-1e9", "turn:nan", "turn:inf"})
        EXPECT_EQ(Mark(Time(0), text).as<TurnMark>()->turns, 0) << text;
    EXPECT_EQ(Mark(Time(0), "turn:-1000").as<TurnMark>()->turns, -1000);
}

TEST(Mark, SaysWhichKeyArmAndProbe) {
    EXPECT_TRUE(Mark(Time(0), "key:on").as<KeyMark>()->on);
    EXPECT_FALSE(Mark(Time(0), "key:off").as<KeyMark>()->on);
    EXPECT_EQ(Mark(Time(0), "arm:off-stop").as<ArmMark>()->arm, Arm::offStop);
    EXPECT_EQ(Mark(Time(0), "probe:controller-side").as<ProbeMark>()->side, ProbeSide::controllerSide);
    EXPECT_EQ(Mark(Time(0), "position:fully, pressed").as<PositionMark>()->name, "fully, pressed");
}

} // namespace
} // namespace stillwire::test
