// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/levels.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {

double doubt_V(const Meter& meter) {
    // Worst of the places it may read at: on one range with the reference, or on another, each off in its own way.
    double worst_V = 0;
    for (const double v_V : {0.55, 0.8, 2.5, 3.95, 4.2}) {
        const bool shared = &meter.rangeFor(v_V) == &meter.rangeFor(5);
        const double x = v_V / 5, raw_V = meter.u_V(v_V, shared), reference_V = meter.u_V(5, shared),
                     ground_V = meter.u_V(0.01, shared);
        const double squares =
            raw_V * raw_V + x * x * reference_V * reference_V + (1 - x) * (1 - x) * ground_V * ground_V;
        const double off_V = (shared ? 0 : 0.02 * meter.percent * v_V) + 3 * meter.rangeFor(5).resolution_V;
        worst_V = std::max(worst_V, off_V + 1.8 * std::sqrt(squares));
    }
    return worst_V + 0.006;
}

std::vector<double> goodLevels(const Machine& machine, double doubt_V, Dice& dice) {
    std::vector<double> levels_V;
    for (const Place& p : machine.places) {
        const double margin_V = machine.drift_V + doubt_V;
        levels_V.push_back(dice.between(p.min_V + margin_V, p.max_V - margin_V));
    }
    return levels_V;
}

std::vector<double> turnedLevels(const Machine& machine, double doubt_V, Dice& dice) {
    double half_V = 0;
    std::vector<double> levels_V;
    for (const Place& p : machine.places) {
        half_V = std::max(half_V, 0.5 * (p.max_V - p.min_V));
        levels_V.push_back(p.middle_V());
    }
    const double by_V = (half_V + doubt_V + dice.between(0.03, 0.12)) * dice.pick({-1, 1});
    for (double& v : levels_V) v += by_V;
    return levels_V;
}

std::vector<double> shortLevels(const Machine& machine, double doubt_V, Dice& dice) {
    const double rest_V = machine.places[machine.rest()].middle_V();
    for (double share = dice.between(0.78, 0.92);; share -= 0.02) {
        std::vector<double> levels_V;
        for (const Place& p : machine.places) levels_V.push_back(rest_V + share * (p.middle_V() - rest_V));
        const Shifts shifts = mendingShifts(machine, levels_V, -2 * doubt_V);
        if (shifts.least_V > shifts.most_V + 0.05) return levels_V;
    }
}

Shifts mendingShifts(const Machine& machine, const std::vector<double>& levels_V, double margin_V) {
    Shifts shifts{-10, 10};
    for (std::size_t i = 0; i < levels_V.size(); ++i) {
        shifts.least_V = std::max(shifts.least_V, machine.places[i].min_V + margin_V - levels_V[i]);
        shifts.most_V = std::min(shifts.most_V, machine.places[i].max_V - margin_V - levels_V[i]);
    }
    return shifts;
}

} // namespace stillwire::hands
