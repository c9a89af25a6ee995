// SPDX-License-Identifier: GPL-3.0-or-later
// The verdict against the truth of the fault bench: twelve fault kinds, every two of them together, good sensors that
// look worse than they are; five meters in turn. The long run takes the thousand seeds of each row that are promised.
#include "tests/meters/bench/verdict_runs.hpp"
#include "tests/support/long_run.hpp"

#include <cstdlib>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

using bench::FaultKind;

constexpr double kWanted = 0.99;
// In a short run of a few dozen one miss must not fail what a thousand would pass.
bool enoughRight(const VerdictTally& tally) {
    return tally.right >= kWanted * tally.all || tally.all - tally.right <= 1;
}

std::string nameOf(FaultKind kind) { return std::string(bench::faultName(kind)); }
FaultKind kindAt(int index) { return static_cast<FaultKind>(index); }

// STILLWIRE_ROW=TEXT looks at those rows alone whose name holds the text.
bool askedFor(const std::string& name) {
    const char* text = std::getenv("STILLWIRE_ROW");
    return !text || name.find(text) != std::string::npos;
}

VerdictTally expectSound(const std::string& name, const BenchScript& script, const Sheet& sheet, int seeds) {
    if (!askedFor(name)) return {};
    const VerdictTally tally = tallyVerdicts(script, sheet, seeds);
    print(name, tally);
    EXPECT_TRUE(enoughRight(tally)) << name;
    EXPECT_EQ(tally.keptInSight, 0) << name;
    EXPECT_LE(tally.couldNot, 0.05 * tally.all + 1) << name;
    return tally;
}

class BenchVerdict : public testing::TestWithParam<int> {};

TEST_P(BenchVerdict, IsTheTruths) {
    const FaultKind kind = kindAt(GetParam());
    expectSound(nameOf(kind), benchScript(kind), pedalSheet(), scaled(25, 1000));
}

// This kind with each one after it in the list. What stands still is set up first, so that a worn or dirty spot lies
// where the wiper then rests.
TEST_P(BenchVerdict, IsTheTruthsWithASecondFault) {
    VerdictTally sum;
    for (int other = GetParam() + 1; other < bench::kFaultKinds; ++other) {
        BenchScript script = benchScript(kindAt(other));
        script.faults.emplace_back().kind = nameOf(kindAt(GetParam()));
        const std::string name = nameOf(kindAt(GetParam())) + " + " + nameOf(kindAt(other));
        sum.add(expectSound(name, script, pedalSheet(), scaled(5, 1000)));
    }
    if (sum.all > 0) print("all with " + nameOf(kindAt(GetParam())), sum);
}

INSTANTIATE_TEST_SUITE_P(Faults, BenchVerdict, testing::Range(0, bench::kFaultKinds), [](const auto& fault) {
    std::string name = nameOf(kindAt(fault.param));
    std::erase(name, '-');
    return name;
});

TEST(GoodSensor, IsKept) { expectSound("good sensor", benchScript(std::nullopt), pedalSheet(), scaled(25, 1000)); }

TEST(GoodSensor, IsKeptOnEverySheet) {
    expectSound("good, high at rest", benchScript(std::nullopt), depthSheet(), scaled(10, 1000));
    expectSound("good, rests in the middle", benchScript(std::nullopt), twoWaySheet(), scaled(10, 1000));
}

TEST(GoodSensor, IsKeptWithPlay) {
    for (const double play_V : {0.005, 0.015, 0.025, 0.040})
        expectSound("play " + std::to_string(play_V), withPlay(play_V), pedalSheet(), scaled(10, 1000));
}

TEST(GoodSensor, IsKeptUnderAnUnsteadyHand) {
    for (const double tremor_V : {0.005, 0.015, 0.025, 0.040})
        expectSound("tremor " + std::to_string(tremor_V), withTremor(tremor_V), pedalSheet(), scaled(10, 1000));
}

} // namespace
} // namespace stillwire::test
