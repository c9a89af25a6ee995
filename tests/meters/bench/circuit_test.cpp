// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/circuit.hpp"

#include <cmath>

#include <gtest/gtest.h>

namespace stillwire::bench {
namespace {

CircuitValues bare(double share) {
    CircuitValues v;
    v.share = share;
    v.referencePath_ohm = v.groundPath_ohm = v.harness_ohm = 0;
    v.meter_ohm = 0;
    return v;
}

double loaded_V(double share, double loadRatio) {
    CircuitValues v = bare(share);
    v.bias_ohm = loadRatio * v.track_ohm;
    return solve(v).settled_V();
}

// Loaded potentiometer, Vref = 5 V: recomputed with ngspice 39, largest difference to the formula 1 nV; checked
// against Vout/Vref = x/(1 + x(1-x)Rt/RL), the university analogue-computer note's loading errors. Columns: RL/Rt.
TEST(LoadedDivider, AgreesWithTheTable) {
    constexpr double kRatio[] = {1, 2, 5, 10, 20, 100, 1000};
    struct Row {
        double share;
        double out_V[7];
    };
    constexpr Row kRows[] = {{0.1, {0.458716, 0.478469, 0.491159, 0.495540, 0.497760, 0.499550, 0.499955}},
                             {0.2, {0.862069, 0.925926, 0.968992, 0.984252, 0.992063, 0.998403, 0.999840}},
                             {0.25, {1.052632, 1.142857, 1.204819, 1.226994, 1.238390, 1.247661, 1.249766}},
                             {0.3, {1.239669, 1.357466, 1.439539, 1.469148, 1.484414, 1.496857, 1.499685}},
                             {0.4, {1.612903, 1.785714, 1.908397, 1.953125, 1.976285, 1.995211, 1.999520}},
                             {0.5, {2.000000, 2.222222, 2.380952, 2.439024, 2.469136, 2.493766, 2.499375}},
                             {0.6, {2.419355, 2.678571, 2.862595, 2.929688, 2.964427, 2.992817, 2.999280}},
                             {2.0 / 3, {2.727273, 3.000000, 3.191489, 3.260870, 3.296703, 3.325942, 3.332593}},
                             {0.7, {2.892562, 3.167421, 3.358925, 3.428012, 3.463632, 3.492665, 3.499265}},
                             {0.75, {3.157895, 3.428571, 3.614458, 3.680982, 3.715170, 3.742982, 3.749297}},
                             {0.8, {3.448276, 3.703704, 3.875969, 3.937008, 3.968254, 3.993610, 3.999360}},
                             {0.9, {4.128440, 4.306220, 4.420432, 4.459861, 4.479841, 4.495954, 4.499595}},
                             {0.0, {0, 0, 0, 0, 0, 0, 0}},
                             {1.0, {5, 5, 5, 5, 5, 5, 5}}};
    for (const Row& row : kRows) {
        for (int i = 0; i < 7; ++i) {
            EXPECT_NEAR(loaded_V(row.share, kRatio[i]), row.out_V[i], 1e-6) << row.share << " at " << kRatio[i];
        }
    }
}

// The handbooks' worst case for a light load: x = 2/3, 4/27 of Rt/RL. Exact maxima recomputed: 0.0144933 at x
// 0.669109 for RL/Rt = 10, 0.001478 at 0.66691 for 100.
TEST(LoadedDivider, IsWorstAtTwoThirds) {
    const auto worst = [](double ratio, double& at) {
        double most = 0;
        for (int i = 1; i < 20000; ++i) {
            const double x = i / 20000.0;
            const double error = x - loaded_V(x, ratio) / 5;
            if (error > most) {
                most = error;
                at = x;
            }
        }
        return most;
    };
    double at = 0;
    EXPECT_NEAR(worst(10, at), 0.0144933, 1e-6);
    EXPECT_NEAR(at, 0.669109, 1e-4);
    EXPECT_NEAR(worst(100, at), 0.001478, 1e-6);
    EXPECT_NEAR(at, 0.66691, 2e-4);
    EXPECT_NEAR(worst(1000, at) * 27 / 4 * 1000, 1.0, 2e-3);
}

// Trade table, computed for 5 V, 5 kohm track, 100 kohm bias, released 15 %, pressed 85 %; printed to three digits.
TEST(ContactResistance, AgreesWithTheTradeTable) {
    struct Row {
        double contact_ohm, downReleased_V, downPressed_V, upReleased_V, upPressed_V;
    };
    constexpr Row kRows[] = {{0, 0.745, 4.22, 0.777, 4.26},
                             {10e3, 0.678, 3.84, 1.16, 4.32},
                             {100e3, 0.374, 2.12, 2.88, 4.63},
                             {kOpen_ohm, 0, 0, 5, 5}};
    const auto level_V = [](double share, double contact_ohm, double bias_V) {
        CircuitValues v = bare(share);
        v.bias_ohm = 100e3;
        v.bias_V = bias_V;
        v.contact_ohm = contact_ohm;
        return solve(v).settled_V();
    };
    for (const Row& row : kRows) {
        EXPECT_NEAR(level_V(0.15, row.contact_ohm, 0), row.downReleased_V, 0.0006);
        EXPECT_NEAR(level_V(0.85, row.contact_ohm, 0), row.downPressed_V, 0.006);
        EXPECT_NEAR(level_V(0.15, row.contact_ohm, 5), row.upReleased_V, 0.006);
        EXPECT_NEAR(level_V(0.85, row.contact_ohm, 5), row.upPressed_V, 0.006);
    }
}

// Same source: "500 ohm [in the ground] makes 0.75/4.25 into 1.14/4.32 V", "50 ohm: 0.79/4.26"; "reference low … both
// ends x0.9 (0.68/3.83-3.86)" for 500 ohm in the feed.
TEST(WireResistance, MovesTheEndsAsTheTradeNotesSay) {
    const auto ends = [](double feed_ohm, double ground_ohm, double& low_V, double& high_V) {
        CircuitValues v = bare(0.15);
        v.referencePath_ohm = feed_ohm;
        v.groundPath_ohm = ground_ohm;
        low_V = solve(v).settled_V();
        v.share = 0.85;
        high_V = solve(v).settled_V();
    };
    double low_V = 0, high_V = 0;
    ends(0, 500, low_V, high_V);
    EXPECT_NEAR(low_V, 1.14, 0.006);
    EXPECT_NEAR(high_V, 4.32, 0.006);
    ends(0, 50, low_V, high_V);
    EXPECT_NEAR(low_V, 0.79, 0.006);
    EXPECT_NEAR(high_V, 4.26, 0.006);
    ends(500, 0, low_V, high_V);
    EXPECT_NEAR(low_V, 0.68, 0.006);
    EXPECT_NEAR(high_V, 3.86, 0.006);
    ends(0, kOpen_ohm, low_V, high_V); // "open ground: near 4.8-5 V at any position"
    EXPECT_GT(low_V, 4.8);
    ends(kOpen_ohm, 0, low_V, high_V); // "open reference: 0 V"
    EXPECT_LT(high_V, 0.01);
}

// "100 k x 100 nF = 10 ms, so a 1 ms open falls only 9.5 %, 10 ms 63 %": 1 - exp(-t/RC).
TEST(PinCapacitor, HidesShortOpens) {
    CircuitValues v = bare(0.15);
    v.bias_ohm = 100e3;
    v.capacitance_F = 100e-9;
    v.side = ProbeSide::controllerSide;
    const CircuitState closed = solve(v);
    v.contact_ohm = kOpen_ohm;
    const CircuitState open = solve(v);
    const double start_V = closed.target_V;
    EXPECT_NEAR(1 - pass(open, open, start_V, 0.001).end_V / start_V, 0.0952, 1e-4);
    EXPECT_NEAR(1 - pass(open, open, start_V, 0.010).end_V / start_V, 0.6321, 1e-4);
    EXPECT_LT(closed.tau_s, 1e-4); // and it is back at once: 638 ohm x 100 nF
}

// The closed form against a fine trapezoid rule of the same equation.
TEST(Passage, IntegratesARampBehindAFilter) {
    CircuitState from, to;
    from.tau_s = to.tau_s = 0.02;
    from.target_V = 1;
    to.target_V = 3;
    const Passage exact = pass(from, to, 2.5, 0.05);
    double v = 2.5, sum = 0;
    constexpr int kStepTable = 2000000;
    constexpr double kStep = 0.05 / kStepTable;
    for (int i = 0; i < kStepTable; ++i) {
        const double target = 1 + 2 * (i + 0.5) / kStepTable;
        const double next = target + (v - target) * std::exp(-kStep / 0.02);
        sum += 0.5 * (v + next) * kStep;
        v = next;
    }
    EXPECT_NEAR(exact.end_V, v, 1e-7);
    EXPECT_NEAR(exact.integral_Vs, sum, 1e-8);
}

// A break beyond a sensor-side probe leaves its reading; the controller's side falls to the bias.
TEST(ProbeSide, DecidesWhatABreakShows) {
    CircuitValues v = bare(0.15);
    v.bias_ohm = 100e3;
    v.meter_ohm = 10e6;
    v.harness_ohm = kOpen_ohm;
    EXPECT_NEAR(solve(v).settled_V(), 0.75, 1e-4);
    v.side = ProbeSide::controllerSide;
    EXPECT_NEAR(solve(v).settled_V(), 0, 1e-5);
}

} // namespace
} // namespace stillwire::bench
