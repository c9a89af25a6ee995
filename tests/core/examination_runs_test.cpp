// SPDX-License-Identifier: GPL-3.0-or-later
// Readings one by one and readings in runs come to the same, to the last digit.
#include "core/examination.hpp"
#include "tests/support/trace_maker.hpp"

#include <sstream>

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

std::string everything(const Findings& f) {
    std::ostringstream out;
    out.precision(17);
    out << f.readings << " " << f.meter.held_V << " " << f.meter.noise_V << " " << f.meter.threshold_V << " "
        << f.meter.interval_s << " " << static_cast<int>(f.state) << "\n";
    for (const BlindSpan& b : f.blind) out << "blind " << b.from.count() << " " << b.to.count() << "\n";
    for (const Excursion& e : f.excursions)
        out << static_cast<int>(e.kind) << " " << e.from.count() << " " << e.to.count() << " " << e.held_V << " "
            << e.extreme_V << " " << e.threshold_V << " " << e.readings << " " << e.poseIndex << "\n";
    for (const LevelJump& j : f.jumps) out << "jump " << j.at.count() << " " << j.from_V << " " << j.to_V << "\n";
    for (const Phase& p : f.phases)
        out << static_cast<int>(p.kind) << " " << p.from.count() << " " << p.to.count() << " "
            << p.level_V.value_or(-1) << " " << p.noise_V.value_or(-1) << "\n";
    for (const PositionLevel& p : f.positions)
        out << p.name << " " << p.level_V.value_or(-1) << " " << p.u_V.value_or(-1) << " " << p.visits.size() << "\n";
    for (const WearBin& b : f.wear) out << b.time_s << " " << b.noise_V << " " << b.dropouts << "\n";
    out << f.machine.stops << " " << f.machine.points.size() << " " << decisionName(f.verdict.decision) << "\n";
    return out.str();
}

Findings inRuns(const TraceMaker& trace, std::size_t longest) {
    Examination examination({risingSheet(), trace.traits()});
    std::vector<Reading> run;
    const auto flush = [&] {
        examination.push(run.data(), run.size());
        run.clear();
    };
    for (const auto& row : trace.rows()) {
        if (const Reading* reading = std::get_if<Reading>(&row)) {
            run.push_back(*reading);
            if (run.size() == longest) flush();
        } else {
            flush();
            examination.push(std::get<Mark>(row));
        }
    }
    flush();
    return examination.findings();
}

// Asked after each reading what it has found: every reading is looked at by every stage, none waits.
Findings askedEachTime(const TraceMaker& trace) {
    Examination examination({risingSheet(), trace.traits()});
    Findings newest;
    for (const auto& row : trace.rows()) {
        if (const Reading* reading = std::get_if<Reading>(&row))
            examination.push(*reading);
        else
            examination.push(std::get<Mark>(row));
        newest = examination.findings();
    }
    return newest;
}

void compare(const TraceMaker& trace) {
    const std::string oneByOne = everything(examine(trace, risingSheet()));
    for (const std::size_t longest : {std::size_t{1}, std::size_t{7}, std::size_t{256}, std::size_t{100000}})
        EXPECT_EQ(everything(inRuns(trace, longest)), oneByOne) << longest;
}

TEST(ExaminationRuns, AGuidedRunWithFaults) {
    for (const double resolution_V : {0.001, 0.01}) {
        TraceMaker trace({.resolution_V = resolution_V, .noise_V = 0.001});
        trace.set(0.85);
        trace.guidedStart();
        trace.wiggle("wiggle-shaft", "", 30, 7, -0.4, 0.6, 0.02);
        trace.mark("step:release");
        for (int i = 0; i < 3; ++i) {
            trace.press("pressed", 4.1);
            trace.press("released", 0.85);
        }
        trace.mark("step:end");
        trace.hold(20);
        compare(trace);
    }
}

TEST(ExaminationRuns, BeingAskedChangesNothing) {
    TraceMaker trace({.interval_s = 0.1, .aperture_s = 0.1, .noise_V = 0.0012});
    trace.set(0.85);
    trace.hold(40);
    trace.dropout(3, 0.5, -0.6);
    trace.hold(20);
    trace.move(4.1, 15);
    trace.silence(3);
    trace.hold(10);
    trace.mark("step:wiggle-shaft");
    trace.wiggle("wiggle-shaft", "", 10, 4, -0.4, 0.6, 0.02);
    EXPECT_EQ(everything(askedEachTime(trace)), everything(examine(trace, risingSheet())));
}

TEST(ExaminationRuns, UnmarkedWithDropoutsSweepsAndBlindTime) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        TraceMaker trace({.interval_s = 0.1, .aperture_s = 0.1, .noise_V = 0.0012}, seed);
        trace.set(0.85);
        for (int i = 0; i < 6; ++i) {
            trace.dropout(12, 0.4, 0.3);
            trace.hold(40);
            trace.move(4.1, 15);
            trace.hold(9);
            trace.flagged(2, Flag::overload);
            trace.hold(8);
            trace.silence(3);
            trace.move(0.85, 0.5);
        }
        trace.hold(30);
        compare(trace);
    }
}

// Within the threshold of its level, and over 5.5 V now and then.
TEST(ExaminationRuns, ALevelJustBelowOverVoltage) {
    TraceMaker trace({.noise_V = 0.004}, 3);
    trace.set(5.495);
    trace.hold(120);
    EXPECT_TRUE(examine(trace, risingSheet()).overVoltage);
    EXPECT_TRUE(inRuns(trace, 256).overVoltage);
    compare(trace);
}

} // namespace
} // namespace stillwire::test
