// SPDX-License-Identifier: GPL-3.0-or-later
// The circuit against ngspice, which knows nothing of our shortcuts: operating points of contact and wire faults, and
// transients of a contact that opens and closes behind the controller's filter.
#include "meters/bench/circuit.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire::bench {
namespace {

// Runs a netlist in batch mode and returns the numbers its `wrdata` wrote, row by row.
std::vector<std::vector<double>> ngspice(const std::string& netlist) {
    namespace fs = std::filesystem;
    std::string pattern = (fs::temp_directory_path() / "bench-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) return {};
    const fs::path folder = pattern;
    std::ofstream(folder / "n.cir") << netlist << ".control\nset wr_singlescale\nset numdgt=12\n"
                                    << "run\nwrdata " << (folder / "out").string()
                                    << " v(s) v(k) v(t) v(b)\n.endc\n.end\n";
    const std::string command = "cd '" + folder.string() + "' && ngspice -b n.cir > log 2>&1";
    std::vector<std::vector<double>> rows;
    // Its status is 1 whenever a netlist prints nothing itself; the numbers, or their absence, speak.
    (void)!std::system(command.c_str());
    std::ifstream in(folder / "out");
    for (std::string line; std::getline(in, line);) {
        std::istringstream words(line);
        std::vector<double> row;
        for (double value = 0; words >> value;) row.push_back(value);
        if (!row.empty()) rows.push_back(row);
    }
    fs::remove_all(folder);
    return rows;
}

std::string resistor(const char* name, const char* a, const char* b, double ohm) {
    char line[96];
    std::snprintf(line, sizeof line, "R%s %s %s %.12g\n", name, a, b, ohm);
    return line;
}

// The same network, element by element. The contact is left out where a switch takes its place.
std::string network(const CircuitValues& v, bool contact) {
    char line[96];
    std::string out = "* three-wire sensor\n";
    std::snprintf(line, sizeof line, "Vref ref 0 %.12g\n", v.reference_V);
    out += line;
    out += resistor("feed", "ref", "t", v.referencePath_ohm);
    out += resistor("top", "t", "w", v.endTop_ohm + (1 - v.share) * v.track_ohm);
    out += resistor("bottom", "w", "b", v.endBottom_ohm + v.share * v.track_ohm);
    out += resistor("ground", "b", "0", v.groundPath_ohm);
    std::snprintf(line, sizeof line, "Iother 0 b %.12g\n", v.groundCurrent_A);
    out += line;
    if (contact) out += resistor("contact", "w", "s", v.contact_ohm);
    out += resistor("harness", "s", "k", v.harness_ohm);
    std::snprintf(line, sizeof line, "Vbias bias 0 %.12g\nVshort short 0 %.12g\n", v.bias_V, v.short_V);
    out += line;
    if (v.bias_ohm > 0) out += resistor("bias", "k", "bias", v.bias_ohm);
    if (v.short_ohm > 0) out += resistor("short", "k", "short", v.short_ohm);
    out += resistor("meter", v.side == ProbeSide::sensorSide ? "s" : "k", "0", v.meter_ohm);
    out += resistor("series", "k", "c", v.series_ohm);
    if (v.capacitance_F > 0) {
        std::snprintf(line, sizeof line, "C1 c 0 %.12g\n", v.capacitance_F);
        out += line;
    }
    return out;
}

CircuitValues ordinary() {
    CircuitValues v;
    v.share = 0.15;
    v.bias_ohm = 100e3;
    v.endTop_ohm = v.endBottom_ohm = 5;
    v.contact_ohm = 100;
    v.series_ohm = 1000;
    v.groundCurrent_A = 0.002;
    return v;
}

TEST(Ngspice, AgreesOnOperatingPoints) {
    std::vector<CircuitValues> cases;
    for (const double contact_ohm : {100.0, 1e3, 1e4, 1e5, 1e6}) {
        for (const double share : {0.15, 0.85}) {
            for (const double bias_V : {0.0, 5.0}) {
                CircuitValues v = ordinary();
                v.contact_ohm = contact_ohm;
                v.share = share;
                v.bias_V = bias_V;
                cases.push_back(v);
            }
        }
    }
    CircuitValues feed = ordinary(), ground = ordinary(), shorted = ordinary(), broken = ordinary();
    feed.referencePath_ohm = 500;
    ground.groundPath_ohm = 150;
    shorted.short_ohm = 47;
    shorted.short_V = 12;
    broken.harness_ohm = 220e3;
    broken.side = ProbeSide::controllerSide;
    cases.insert(cases.end(), {feed, ground, shorted, broken});
    for (const CircuitValues& v : cases) {
        const auto rows = ngspice(network(v, true) + ".op\n");
        ASSERT_EQ(rows.size(), 1u) << "ngspice must be installed: tests/packages.txt lists it";
        ASSERT_GE(rows[0].size(), 5u);
        const bool sensorSide = v.side == ProbeSide::sensorSide;
        // Its solver stops at a relative change of 1e-3 by default only between iterations of non-linear parts; a
        // linear network comes out to its 1e-12 S leak from each node: about 1 uV at the highest resistance here.
        EXPECT_NEAR(solve(v).settled_V(), sensorSide ? rows[0][1] : rows[0][2], 5e-6) << "contact " << v.contact_ohm;
    }
}

// Opens at 10 ms, closes at 40 ms: what stands on the pin at every instant ngspice reports, and the mean over the
// whole.
TEST(Ngspice, AgreesOnAContactThatOpensBehindTheFilter) {
    for (const double series_ohm : {1.0, 10e3}) {
        for (const double bias_V : {0.0, 5.0}) {
            CircuitValues v = ordinary();
            v.series_ohm = series_ohm;
            v.bias_V = bias_V;
            v.capacitance_F = 100e-9;
            const double closed_ohm = v.contact_ohm, open_ohm = 1e6;
            const auto rows = ngspice(network(v, false) + "Vgate gate 0 pulse(1 0 10m 1n 1n 30m 1)\n"
                                                          "S1 w s gate 0 contact\n"
                                                          ".model contact sw(vt=0.5 vh=0 ron=100 roff=1e6)\n"
                                                          ".options reltol=1e-6 abstol=1e-12 vntol=1e-9\n"
                                                          ".tran 4u 60m 0 4u\n");
            ASSERT_GT(rows.size(), 10000u) << "ngspice must be installed: tests/packages.txt lists it";

            v.contact_ohm = closed_ohm;
            const CircuitState closed = solve(v);
            v.contact_ohm = open_ohm;
            const CircuitState open = solve(v);
            const double start_V = closed.target_V;
            const double end_V = pass(open, open, start_V, 0.030).end_V;
            double worst_V = 0, area_Vs = 0;
            for (std::size_t i = 0; i < rows.size(); ++i) {
                const double t_s = rows[i][0], shown_V = rows[i][1];
                if (i > 0) area_Vs += 0.5 * (shown_V + rows[i - 1][1]) * (t_s - rows[i - 1][0]);
                if (std::abs(t_s - 0.010) < 3e-5 || std::abs(t_s - 0.040) < 3e-5) continue; // the edges themselves
                double ours_V = closed.shown_V(start_V);
                if (t_s > 0.040) {
                    ours_V = closed.shown_V(pass(closed, closed, end_V, t_s - 0.040).end_V);
                } else if (t_s > 0.010) {
                    ours_V = open.shown_V(pass(open, open, start_V, t_s - 0.010).end_V);
                }
                worst_V = std::max(worst_V, std::abs(ours_V - shown_V));
            }
            // Half a thousandth of the 4 V step: what its step control leaves right behind an edge of 70 us.
            EXPECT_LT(worst_V, 2e-3) << "series " << series_ohm << " bias " << bias_V;
            const Passage down = pass(open, open, start_V, 0.030), up = pass(closed, closed, end_V, 0.020);
            const double ours_Vs = closed.shown_V(start_V) * 0.010 + shownIntegral_Vs(open, open, down, 0.030) +
                                   shownIntegral_Vs(closed, closed, up, 0.020);
            EXPECT_NEAR(ours_Vs, area_Vs, 2e-5 * 0.3) << "series " << series_ohm << " bias " << bias_V;
        }
    }
}

} // namespace
} // namespace stillwire::bench
