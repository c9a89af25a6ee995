// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/machine.hpp"

#include "tests/hands/text.hpp"

#include <algorithm>

namespace stillwire::hands {
namespace {

// All figures invented, in the range that is common practice for five-volt sensors (no source).
Machine pedal() {
    return {"Ice-rink resurfacer drive pedal",
            {{"released", 0.85, 0.85, true}, {"pressed", 4.12, 4.12, false}},
            {"connector", "under-seat", "frame", "controller"}};
}

Machine depthLever() {
    return {"Beach cleaner depth lever",
            {{"raised", 0.80, 0.80, true}, {"half", 2.35, 2.35, false}, {"deep", 4.05, 4.05, false}},
            {"connector", "column", "controller"}};
}

Machine twoWay() {
    return {"Road-marking trolley two-way lever",
            {{"back", 0.90, 0.90, false}, {"neutral", 2.50, 2.50, true}, {"forward", 4.10, 4.10, false}},
            {"connector", "handle", "deck", "controller"}};
}

} // namespace

std::size_t Machine::rest() const {
    return static_cast<std::size_t>(
        std::find_if(places.begin(), places.end(), [](const Place& p) { return p.rest; }) - places.begin());
}

std::vector<std::size_t> Machine::working() const {
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (!places[i].rest) all.push_back(i);
    return all;
}

std::string Machine::sheetToml() const {
    std::string toml = "format = 1\nname = \"" + name + "\"\n";
    toml += text("[reference]\nnominal_V = %.1f\nmin_V = 4.75\nmax_V = 5.25\n[ground]\nmax_drop_V = %.2f\n",
                 nominal_V, maxDrop_V);
    for (const Place& p : places) {
        toml += "[[position]]\nname = \"" + p.name + "\"\n";
        if (p.rest) toml += "rest = true\n";
        toml += text("min_V = %.3f\nmax_V = %.3f\n", p.min_V, p.max_V);
    }
    return toml + text("[adjustment]\ndrift_allowance_V = %.3f\n[wiggle]\nplay_V = %.3f\n", drift_V, play_V);
}

Machine anyMachine(Dice& dice, double leastHalf_V) {
    Machine machine = dice.pick({pedal, depthLever, twoWay})();
    const bool falls = dice.chance(0.5);
    if (falls) machine.name += ", falling wire";
    machine.drift_V = dice.pick({0.02, 0.03, 0.05});
    for (Place& p : machine.places) {
        const double middle_V = p.middle_V() + dice.between(-0.06, 0.06);
        const double half_V = std::max(leastHalf_V + machine.drift_V, dice.between(0.12, 0.22));
        p.min_V = (falls ? machine.nominal_V - middle_V : middle_V) - half_V;
        p.max_V = p.min_V + 2 * half_V;
    }
    return machine;
}

} // namespace stillwire::hands
