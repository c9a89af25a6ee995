// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/circuit.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::bench {
namespace {

// A subtree seen from its node: conductance to a source behind it.
struct Norton {
    double g = 0, i = 0;
    void add(double ohm, double volts_V) {
        g += 1.0 / ohm;
        i += volts_V / ohm;
    }
    // The same seen through a resistor.
    [[nodiscard]] Norton through(double ohm) const {
        const double factor = 1.0 / (1.0 + ohm * g);
        return {g * factor, i * factor};
    }
};

// value = fixed + gain * (voltage of K)
struct Affine {
    double fixed = 0, gain = 0;
};

// Voltage of a node from its subtree and its parent behind `ohm`.
Affine below(const Norton& node, double ohm, const Affine& parent) {
    const double g = 1.0 / ohm, all = node.g + g;
    return {(node.i + g * parent.fixed) / all, g * parent.gain / all};
}

} // namespace

CircuitState solve(const CircuitValues& v) {
    constexpr double kLeast_ohm = 1e-6;
    const double top_ohm = std::max(v.endTop_ohm + (1.0 - v.share) * v.track_ohm, kLeast_ohm);
    const double bottom_ohm = std::max(v.endBottom_ohm + v.share * v.track_ohm, kLeast_ohm);
    const double contact_ohm = std::max(v.contact_ohm, kLeast_ohm);
    const double harness_ohm = std::max(v.harness_ohm, kLeast_ohm);
    const auto meter = [&](Wire wire, ProbeSide side, Norton& node) {
        if (v.probe == wire && (wire != Wire::signal || v.side == side) && v.meter_ohm > 0) node.add(v.meter_ohm, 0);
    };

    Norton t, b, w, s, k;
    t.add(std::max(v.referencePath_ohm, kLeast_ohm), v.reference_V);
    meter(Wire::reference, v.side, t);
    b.add(std::max(v.groundPath_ohm, kLeast_ohm), 0);
    b.i += v.groundCurrent_A;
    meter(Wire::ground, v.side, b);
    const Norton fromT = t.through(top_ohm), fromB = b.through(bottom_ohm);
    w = {fromT.g + fromB.g, fromT.i + fromB.i};
    s = w.through(contact_ohm);
    meter(Wire::signal, ProbeSide::sensorSide, s);
    k = s.through(harness_ohm);
    if (v.bias_ohm > 0) k.add(v.bias_ohm, v.bias_V);
    if (v.short_ohm > 0) k.add(v.short_ohm, v.short_V);
    meter(Wire::signal, ProbeSide::controllerSide, k);

    CircuitState out;
    const double thevenin_ohm = 1.0 / k.g;
    out.target_V = k.i / k.g;
    out.tau_s = (thevenin_ohm + v.series_ohm) * v.capacitance_F;
    // K between the network (Thevenin) and the capacitor behind the series resistor.
    const double all_ohm = thevenin_ohm + v.series_ohm;
    const Affine atK{out.target_V * v.series_ohm / all_ohm, thevenin_ohm / all_ohm};

    const Affine atS = below(s, harness_ohm, atK);
    Affine shown, ground;
    if (v.probe == Wire::none) return out;
    if (v.probe == Wire::signal && v.side == ProbeSide::controllerSide) {
        shown = atK;
    } else if (v.probe == Wire::signal && v.black == BlackLead::batteryNegative) {
        shown = atS;
    } else {
        const Affine atW = below(w, contact_ohm, atS);
        const Affine atB = below(b, bottom_ohm, atW);
        shown = v.probe == Wire::reference ? below(t, top_ohm, atW) : v.probe == Wire::ground ? atB : atS;
        ground = atB;
    }
    if (v.black == BlackLead::sensorGround) {
        if (v.probe == Wire::signal && v.side == ProbeSide::controllerSide) {
            ground = below(b, bottom_ohm, below(w, contact_ohm, atS));
        }
        shown.fixed -= ground.fixed;
        shown.gain -= ground.gain;
    }
    out.fixed_V = shown.fixed;
    out.gain = shown.gain;
    return out;
}

Passage pass(const CircuitState& from, const CircuitState& to, double capacitor_V, double length_s) {
    const double rise_V = to.target_V - from.target_V;
    // Far below a nanosecond the capacitor follows; the closed form would divide by nothing.
    if (from.tau_s <= 1e-12) return {to.target_V, (from.target_V + 0.5 * rise_V) * length_s};
    if (length_s <= 0) return {capacitor_V, 0};
    const double tau_s = from.tau_s;
    const double lag_V = rise_V / length_s * tau_s;
    const double offset_V = capacitor_V - from.target_V + lag_V;
    const double gone = -std::expm1(-length_s / tau_s); // 1 - exp(-t/tau)
    return {to.target_V - lag_V + offset_V * (1.0 - gone),
            (from.target_V + 0.5 * rise_V - lag_V) * length_s + offset_V * tau_s * gone};
}

double shownIntegral_Vs(const CircuitState& from, const CircuitState& to, const Passage& passage, double length_s) {
    return 0.5 * (from.fixed_V + to.fixed_V) * length_s + 0.5 * (from.gain + to.gain) * passage.integral_Vs;
}

} // namespace stillwire::bench
