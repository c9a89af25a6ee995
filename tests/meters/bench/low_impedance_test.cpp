// SPDX-License-Identifier: GPL-3.0-or-later
// A meter left in its low-impedance mode, on the fault bench's circuit. 3 kohm is a usual input there (from memory);
// what it takes from a divider is Thevenin's theorem.
#include "core/examination_capture.hpp"
#include "tests/support/bench_runs.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

Findings runWith(double input_ohm, std::uint64_t seed) {
    BenchScript script = benchScript(std::nullopt);
    script.setup.meter.input_ohm = input_ohm;
    const Simulation simulation = benchRun(script, pedalSheet(), seed);
    ExaminationSetup setup;
    setup.sheet = pedalSheet();
    setup.meter = meterTraits(MeterKind::fair);
    Examination examination(setup);
    pushRows(simulation.capture, examination);
    return examination.findings();
}

} // namespace

TEST(LowImpedance, IsToldWithItsMendAndNeverTakenForTheSensor) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const Findings f = runWith(3000, seed);
        EXPECT_EQ(f.verdict.decision, Decision::cannotTell) << f.verdict.reasons.front().says.english();
        EXPECT_NE(f.verdict.reasons.front().says.english().find("low-impedance mode"), std::string::npos)
            << f.verdict.reasons.front().says.english();
        EXPECT_NE(f.verdict.next.front().says.english().find("low-impedance mode off"), std::string::npos);
    }
}

TEST(LowImpedance, AnOrdinaryInputSaysNothingOfTheKind) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const Findings f = runWith(10e6, seed);
        EXPECT_EQ(f.verdict.decision, Decision::keep);
        for (const auto& reason : f.verdict.reasons)
            EXPECT_EQ(reason.says.english().find("low-impedance"), std::string::npos);
    }
}

} // namespace stillwire::test
