// SPDX-License-Identifier: GPL-3.0-or-later
// Everything the fault bench is built from, before it runs. Plain values; invented figures unless a comment says
// else.
#pragma once

#include "meters/bench/circuit.hpp"

#include <string>
#include <vector>

namespace stillwire::bench {

// Where an intermittent fault sits. `wiper` is gated by the place on the track, the harness ones by their section;
// `signalPin` lies between the sensor and a back-probe at its connector, `signalWire` between that and the
// controller.
enum class Place { wiper, signalPin, signalWire, referenceWire, groundWire, shortToGround, shortToSupply };

// A contact that opens, or a short that makes, at random times. The rate at a moment is
//   (idle + shaft·a_shaft + harness·a_section + motion·moving) · (warm + (1-warm)·cold) · exp(-wipes/wipesToClear),
// a being 1 while the hand is shaking that part, `kHeldActivity` while it only holds it over, 0 when it is off it.
struct Intermittent {
    std::string cause; // the name truth gives it: "dirty spot", "broken strand in section 2"
    Place place = Place::wiper;
    double share = -1; // wiper: middle of the bad spot on the track; negative: everywhere
    double width = 0;  // wiper: full width of the spot, in shares of the track
    int section = 0;   // harness: 1 is the sensor's own connector; 0: every section
    double side = 0;   // -1: left only, +1: right only, 0: either
    double idle_per_s = 0;
    double shaft_per_s = 0;
    double harness_per_s = 0;
    double motion_per_s = 0;                 // while the wiper travels
    double ohmMin = 1e5, ohmMax = kOpen_ohm; // series resistance when open, or of the short; drawn log-uniformly
    double durationMin_s = 0.15, durationMax_s = 1.5; // drawn log-uniformly
    double warm = 1;                                  // share of the cold rate left once warm
    double wipesToClear = 0;                          // 0: wiping does not help
};
inline constexpr double kHeldActivity = 0.25;

struct ReferenceSource {
    double drop_V = 0;   // constant, at the source
    double path_ohm = 1; // feed to the sensor, pins included
    double wander_V = 0; // slow random sag below the rest, 0 to wander_V
};

struct GroundReturn {
    double path_ohm = 0.5;
    double otherCurrent_A = 0.002; // other sensors on the same ground
};

struct ControllerInput {
    double bias_ohm = 100e3; // 0: none. 47-470 kohm is usual (from memory)
    bool biasUp = false;
    double series_ohm = 0;
    double capacitance_F = 100e-9;
};

struct Track {
    double ohm = 5000;
    double endTop_ohm = 5, endBottom_ohm = 5;
    double contact_ohm = 100;      // of a healthy wiper
    double contactVariation = 0.5; // it varies by this share over the track, for ever the same at the same place
    double roughness_ohm = 0;      // worn: extra, 0 to this, at random over the track
};

struct Mechanics {
    std::vector<double> level_V; // of each position of the sheet, nominal, before any turn; empty: the aims
    std::vector<double> share;   // how far each position moves with the mount; empty: all 1
    double mount_V = 0;          // the mount stands this far off, nominal, times share
    double perTurn_V = 0.06;     // one part-turn
    double play_V = 0.010;       // bushing: shift at full side load, either side
    double lean_V = 0;           // the arm turns so far with a full push to the right
    bool leanStays = false;      // though the arm is held: a loose bushing
    double tremor_V = 0.004;     // of a hand that holds the pedal, deviation
    double backlash_V = 0;       // lost motion of the linkage
    double hangChance = 0;       // of a release that stops short
    double hang_V = 0.15;        // how far short
    bool hangInSensor = false;   // the sensor's own spring, the arm being on its stop; else the linkage's
    double coldShift_V = 0;      // level when cold, above warm
    double soak_s = 240;         // cold fades with this time constant: gone in 10 to 15 min
};

// What a meter description does not say.
struct MeterQuirks {
    double input_ohm = 10e6;
    double jitter_s = 0.004;    // each reading this early or late at most
    double latency_s = 0.012;   // from the end of the aperture to the frame's last byte
    double noise_counts = 0.35; // deviation of one reading
    double filter = 1;          // share of the new value in the display filter; 1: none
    double blank_s = 1.0;       // dark after a range change
    double lockedRange_V = 0;   // full scale of the range it is locked to; 0: autorange if there are several
    double ripple_V = 0;        // mains hum on the lead, amplitude
    double mains_Hz = 50;
    double accuracyUsed = 1; // gain and counts error are drawn within ± this share of the limits, fixed for a run
};

struct BenchSetup {
    double nominal_V = 5;
    ReferenceSource reference;
    GroundReturn ground;
    ControllerInput controller;
    Track track;
    Mechanics mechanics;
    std::vector<Intermittent> faults;
    MeterQuirks meter;
    double harness_ohm = 0.2;
    double supply_V = 0; // what a short to supply meets; 0: the reference
    ProbeSide side = ProbeSide::sensorSide;
    BlackLead black = BlackLead::batteryNegative;
};

} // namespace stillwire::bench
