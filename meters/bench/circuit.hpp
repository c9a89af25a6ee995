// SPDX-License-Identifier: GPL-3.0-or-later
// The circuit: reference, track, wiper, harness, controller input and meter, as one network with one capacitor.
//
//   reference_V --referencePath-- T --(1-x) track-- W --x track-- B --groundPath-- battery negative
//                                                   |contact
//                                                   S  (sensor-side probe)
//                                                   |harness
//                     short_V --short-------------- K --bias-- bias_V      (controller-side probe)
//                                                   |series
//                                                   C capacitor to battery negative
// The meter loads the wire it is on; its return is taken as battery negative (half a microampere at most, so the
// sensor ground as black lead changes what is subtracted, not the load).
#pragma once

#include "core/capture/header.hpp"
#include "core/procedure/procedure.hpp"

namespace stillwire::bench {

inline constexpr double kOpen_ohm = 1e12;

struct CircuitValues {
    double reference_V = 5.0;
    double referencePath_ohm = 1.0;
    double groundPath_ohm = 0.5;
    double groundCurrent_A = 0; // what other sensors send through the same ground
    double track_ohm = 5000;
    double endTop_ohm = 0, endBottom_ohm = 0;
    double share = 0.5;     // x: electrical place of the wiper, 0 at the ground end
    double contact_ohm = 0; // wiper and signal pin
    double harness_ohm = 0.2;
    double bias_ohm = 0;  // 0: none
    double bias_V = 0;    // 0: pull-down; the reference: pull-up
    double short_ohm = 0; // 0: none
    double short_V = 0;
    double series_ohm = 0;
    double capacitance_F = 0; // 0: none
    double meter_ohm = 10e6;  // 0: ideal
    Wire probe = Wire::signal;
    ProbeSide side = ProbeSide::sensorSide;
    BlackLead black = BlackLead::batteryNegative;
};

// What the network is to its capacitor, and what the meter sees of it. With v the capacitor's voltage:
//   dv/dt = (target_V - v) / tau_s,   shown = fixed_V + gain * v.   tau_s == 0: v is target_V at once.
struct CircuitState {
    double target_V = 0;
    double tau_s = 0;
    double fixed_V = 0;
    double gain = 0;
    [[nodiscard]] double shown_V(double capacitor_V) const { return fixed_V + gain * capacitor_V; }
    [[nodiscard]] double settled_V() const { return fixed_V + gain * target_V; }
};

// Norton reduction along the tree, sums of positive terms only. Probe none: shown is 0.
[[nodiscard]] CircuitState solve(const CircuitValues& values);

// The capacitor over `length_s` while target goes straight from `from` to `to` (tau of `from`).
struct Passage {
    double end_V = 0;       // capacitor at the end
    double integral_Vs = 0; // of the capacitor's voltage
};
[[nodiscard]] Passage pass(const CircuitState& from, const CircuitState& to, double capacitor_V, double length_s);

// Integral of what the meter sees over the same stretch, given its passage.
[[nodiscard]] double shownIntegral_Vs(const CircuitState& from, const CircuitState& to, const Passage& passage,
                                      double length_s);

} // namespace stillwire::bench
