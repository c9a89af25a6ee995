// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/stage.hpp"

#include "meters/bench/faults.hpp"
#include "meters/bench/simulate.hpp"

#include <algorithm>

namespace stillwire::bench {

Stage::Stage(const BenchSetup& setup, const HandHabits& habits, const Sheet& sheet, const MeterTraits& meter,
             std::uint64_t seed)
    : setup_(setup), sheet_(sheet), rig_(setup, setup.mechanics.level_V, restIndex(sheet), meter, seed),
      hand_(rig_, sheet_, habits, seed) {}

void Stage::advanceTo(double t_s, std::vector<Reading>& out) {
    while (rig_.now_s() < t_s) {
        rig_.advanceTo(std::min(t_s, std::max(hand_.nextDue_s(), rig_.now_s())), out);
        hand_.act();
    }
}

bool Stage::advanceToReading(double t_s, std::vector<Reading>& out) {
    const std::size_t before = out.size();
    while (rig_.now_s() < t_s && out.size() == before) {
        rig_.advanceTo(std::min({t_s, std::max(hand_.nextDue_s(), rig_.now_s()), rig_.nextArrival_s()}), out);
        hand_.act();
    }
    return out.size() != before;
}

Truth Stage::truth(const BenchPlan& plan) const {
    Truth out;
    out.events = rig_.events();
    for (TruthEvent& event : out.events) event.to_s = std::min(event.to_s, rig_.now_s());
    for (const MeterBlind& blind : rig_.meter().blind()) {
        out.blind.push_back({std::string(blind.cause), blind.from_s, blind.to_s});
    }
    out.spans = hand_.spans();
    out.visits = hand_.visits();
    out.hangs = hand_.hangs();
    judgeTruth(out, setup_, plan, sheet_);
    return out;
}

} // namespace stillwire::bench
