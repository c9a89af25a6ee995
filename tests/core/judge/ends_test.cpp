// SPDX-License-Identifier: GPL-3.0-or-later
// What else shifts the ends: resistances beyond the places that were measured, and lost motion. Patterns of the
// trade's table (common practice, no source), voltages from the divider: a ground raised by G lifts a level L of a
// 5 V sensor to G + L·(5 - G)/5; a feed or a signal under a pull-down that keeps a share k leaves k·L.
#include "core/judge/lost_motion.hpp"
#include "tests/support/guided_run.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

std::vector<std::string> said(const Findings& f) {
    std::vector<std::string> out;
    for (const Cause& cause : f.verdict.causes) out.push_back(cause.says.english() + " " + cause.nextTest.english());
    return out;
}

Findings withEnds(double rest_V, double pressed_V) {
    GuidedRun run;
    run.rest_V = rest_V;
    run.pressed_V = pressed_V;
    return examine(guided(run), risingSheet());
}

const char* const kGround = "Before turning anything, measure the ground at the sensor's own pin";
const char* const kFeed = "Before turning anything, measure the reference at the sensor's own pin";

TEST(Ends, LowEndUpAndHighEndNearlySameNamesTheGroundSide) {
    for (const double ground_V : {0.25, 0.39}) {
        const Findings f = withEnds(ground_V + 0.82 * (5 - ground_V) / 5, ground_V + 4.1 * (5 - ground_V) / 5);
        EXPECT_THAT(said(f), Contains(HasSubstr(kGround)));
        EXPECT_THAT(said(f), Contains(HasSubstr("about " + volts(ground_V) + " on the ground side")));
        EXPECT_THAT(said(f), Not(Contains(HasSubstr(kFeed))));
    }
}

TEST(Ends, BothLowByTheSameShareNamesFeedAndSignal) {
    for (const double kept : {0.94, 0.95})
        EXPECT_THAT(said(withEnds(0.82 * kept, 4.1 * kept)), Contains(HasSubstr(kFeed)));
    // So low a meter's own load may be it.
    const Findings low = withEnds(0.82 * 0.85, 4.1 * 0.85);
    EXPECT_EQ(low.verdict.decision, Decision::cannotTell);
    EXPECT_THAT(said(low), Contains(HasSubstr("both sides of the signal pin")));
}

TEST(Ends, AMountThatTurnedIsNeither) {
    for (const double shift_V : {0.2, 0.3, -0.25}) {
        const Findings f = withEnds(0.82 + shift_V, 4.1 + shift_V);
        EXPECT_THAT(said(f), Not(Contains(HasSubstr("Before turning anything")))) << shift_V;
    }
}

TEST(Ends, GoodOnesSayNothingOfIt) {
    EXPECT_EQ(withEnds(0.82 * 0.96, 4.1 * 0.96).verdict.decision, Decision::adjust); // too near its limit
    EXPECT_EQ(withEnds(0.82, 4.1).verdict.causes.size(), 1U);
}

// Without a measured reference an end that is only uncertain is no linkage fault.
TEST(Ends, UndecidedAgainstAnAssumedReferenceIsNoLinkage) {
    for (const double rest_V : {4.19, 4.20, 4.21, 4.23}) {
        GuidedRun run;
        run.rest_V = rest_V;
        const TraceMaker whole = guided(run);
        std::vector<std::variant<Reading, Mark>> rows; // but for the reference
        bool out = false;
        for (const auto& row : whole.rows()) {
            const Mark* mark = std::get_if<Mark>(&row);
            if (mark && mark->as<StepMark>()) out = mark->opens(Step::reference);
            if (!out) rows.push_back(row);
        }
        const Findings f = examine(rows, fallingSheet(), whole.traits());
        EXPECT_NE(f.verdict.decision, Decision::checkLinkage) << whatItSaid(f);
        if (rest_V > 4.2) { // else it lies outside as it stands
            EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
        }
    }
}

// The reference 0.2 V lower at the second look, and inside its limits both times: no turn is advised from a guess.
TEST(Ends, AgainstAReferenceThatWandersNothingIsTurned) {
    GuidedRun run;
    run.rest_V = 0.82;
    run.pressed_V = 4.16;
    TraceMaker trace = guided(run);
    trace.mark("step:reference");
    trace.hold(1);
    trace.set(4.8);
    trace.hold(8);
    trace.mark("step:end");
    const Findings f = examine(trace, risingSheet());
    ASSERT_TRUE(f.reference);
    EXPECT_NEAR(f.reference->change_V, 0.2, 0.01);
    EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << whatItSaid(f);
    std::vector<std::string> next;
    for (const auto& one : f.verdict.next) next.push_back(one.says.english());
    EXPECT_THAT(next, Contains(HasSubstr("The reference changed by 0.20 V between looks")));
}

Sheet leverSheet() {
    Sheet sheet = risingSheet();
    sheet.positions = {
        {"back", {0.4, 0.8}, 0.6, false}, {"middle", {2.35, 2.65}, 2.5, true}, {"ahead", {4.2, 4.6}, 4.4, false}};
    return sheet;
}

TEST(LostMotion, IsAGapThatRepeats) {
    const auto lost = findLostMotion(leverSheet(), {{0, 1, 2.45}, {2, 1, 2.55}, {0, 1, 2.452}, {2, 1, 2.548}}, 0.05);
    ASSERT_TRUE(lost);
    EXPECT_EQ(lost->position, "middle");
    EXPECT_NEAR(lost->fromBefore_V, 2.451, 1e-9);
    EXPECT_NEAR(lost->fromAfter_V, 2.549, 1e-9);
}

TEST(LostMotion, IsNotWhatScattersOrIsWithinPlay) {
    const Sheet lever = leverSheet();
    EXPECT_FALSE(findLostMotion(lever, {{0, 1, 2.45}, {2, 1, 2.55}}, 0.05)) << "once each";
    EXPECT_FALSE(findLostMotion(lever, {{0, 1, 2.48}, {2, 1, 2.52}, {0, 1, 2.48}, {2, 1, 2.52}}, 0.05));
    EXPECT_FALSE(findLostMotion(lever, {{0, 1, 2.40}, {2, 1, 2.55}, {0, 1, 2.50}, {2, 1, 2.60}}, 0.05));
    EXPECT_FALSE(findLostMotion(lever, {{1, 0, 0.5}, {1, 0, 0.7}, {1, 2, 4.3}, {1, 2, 4.5}}, 0.05)) << "an end";
}

TEST(LostMotion, IsTheLinkage) {
    TraceMaker trace(MakerMeter{}, 4);
    trace.set(2.5);
    trace.guidedStart(5.0, 0.0);
    trace.wiggle("wiggle-shaft", "", 32);
    trace.wiggle("wiggle-harness", "section-1/", 32);
    trace.mark("step:full-press");
    for (int i = 0; i < 4; ++i) {
        trace.press("back", 0.6, 4);
        trace.press("middle", 2.44);
        trace.press("ahead", 4.4, 4);
        trace.press("middle", 2.56);
    }
    trace.mark("step:end");
    const Findings f = examine(trace, leverSheet());
    EXPECT_EQ(f.verdict.decision, Decision::checkLinkage) << whatItSaid(f);
    EXPECT_THAT(f.verdict.reasons.front().says.english(), HasSubstr("coming from back"));
}

} // namespace
} // namespace stillwire::test
