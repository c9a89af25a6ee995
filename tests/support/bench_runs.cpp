// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/bench_runs.hpp"

#include <stdexcept>

namespace stillwire::test {
namespace {

Position position(const char* name, double min_V, double max_V, double aim_V, bool rest) {
    Position out;
    out.name = name;
    out.window = {min_V, max_V};
    out.aim_V = aim_V;
    out.rest = rest;
    return out;
}

Sheet sheet(const char* name, std::vector<Position> positions) {
    Sheet out;
    out.name = name;
    out.positions = std::move(positions);
    out.driftAllowance_V = 0.05;
    out.source = "demo figures, not a maker's";
    return out;
}

} // namespace

Sheet pedalSheet() {
    Sheet out = sheet("Resurfacer drive pedal",
                      {position("released", 0.70, 0.95, 0.82, true), position("pressed", 3.90, 4.30, 4.10, false)});
    out.drive = Drive{1.10, 3.60, 0.05};
    return out;
}

Sheet depthSheet() {
    Sheet out = sheet("Beach cleaner depth lever",
                      {position("lifted", 3.98, 4.42, 4.21, true), position("deep", 1.14, 1.56, 1.35, false)});
    out.driftAllowance_V = 0.06;
    return out;
}

Sheet twoWaySheet() {
    Sheet out = sheet("Marking trolley two-way lever",
                      {position("back", 0.50, 0.90, 0.70, false), position("middle", 2.35, 2.65, 2.50, true),
                       position("forward", 4.10, 4.50, 4.30, false)});
    out.driftAllowance_V.reset(); // its mount cannot be turned
    return out;
}

const char* meterName(MeterKind kind) {
    const char* names[] = {"fair", "brisk", "slow", "coarse", "ranging"};
    return names[static_cast<int>(kind)];
}

MeterTraits meterTraits(MeterKind kind) {
    MeterTraits out;
    switch (kind) {
    case MeterKind::fair: out = {"fair", 0.33, 0.10, {{6.0, 0.001, 0.5, 2}}, ""}; break;
    case MeterKind::brisk: out = {"brisk", 0.20, 0.18, {{6.0, 0.001, 0.3, 2}}, ""}; break;
    case MeterKind::slow: out = {"slow", 0.50, 0.40, {{6.0, 0.001, 0.5, 3}}, ""}; break;
    case MeterKind::coarse: out = {"coarse", 0.33, 0.10, {{20.0, 0.01, 1.0, 3}}, ""}; break;
    case MeterKind::ranging: out = {"ranging", 0.33, 0.10, {{4.0, 0.001, 0.5, 2}, {40.0, 0.01, 0.5, 2}}, ""}; break;
    }
    return out;
}

bench::MeterQuirks meterQuirks(MeterKind kind) {
    bench::MeterQuirks out;
    if (kind == MeterKind::slow) out.filter = 0.6;
    return out;
}

BenchScript benchScript(std::optional<bench::FaultKind> fault, MeterKind meter) {
    BenchScript out;
    out.name = fault ? std::string(bench::faultName(*fault)) : "good";
    if (fault) out.faults.emplace_back().kind = out.name;
    out.setup.meter = meterQuirks(meter);
    return out;
}

Simulation benchRun(std::optional<bench::FaultKind> fault, std::uint64_t seed, MeterKind meter) {
    return benchRun(benchScript(fault, meter), pedalSheet(), seed, meter);
}

Simulation benchRun(const BenchScript& script, const Sheet& sheet, std::uint64_t seed, MeterKind meter) {
    Result<Simulation> run = simulate(script, sheet, meterTraits(meter), seed);
    if (!run) throw std::logic_error(run.error().text());
    return std::move(run.value());
}

BenchScript withPlay(double play_V) {
    BenchScript out = benchScript(std::nullopt);
    out.setup.mechanics.play_V = play_V;
    return out;
}

BenchScript withTremor(double tremor_V) {
    BenchScript out = benchScript(std::nullopt);
    out.setup.mechanics.tremor_V = tremor_V;
    return out;
}

BenchScript unmarked(BenchScript script) {
    script.plan.marked = false;
    return script;
}

} // namespace stillwire::test
