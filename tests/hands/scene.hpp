// SPDX-License-Identifier: GPL-3.0-or-later
// What is on the three wires and at the lead's tip, as a function of time, and the marks that were set meanwhile.
// Plain data; whoever writes the run adds to it.
#pragma once

#include "core/domain/wire.hpp"

#include <string>
#include <vector>

namespace stillwire::hands {

struct Key { // of the hand's way; from one to the next it goes smoothly
    double at_s = 0, level_V = 0;
};
struct Span {
    double from_s = 0, to_s = 0;
    [[nodiscard]] bool holds(double at_s) const { return at_s >= from_s && at_s < to_s; }
};
// Something that the lever does beside the hand's way: there in rise_s, back in fall_s after to_s.
struct Bump {
    double from_s = 0, rise_s = 0.1, to_s = 0, fall_s = 0.1;
    double depth_V = 0;  // signed, nominal
    double wobble_V = 0; // amplitude, while it lasts
    double wobble_Hz = 1.5;
};
// A contact that lets go: the signal goes `share` of the way to `toward_V`.
struct Drop {
    double from_s = 0, to_s = 0;
    double toward_V = 0, share = 1;
};
enum class Air { pulledToZero, wanders, hums };
struct Loose { // the tip, or the black clip, touches nothing
    double from_s = 0, to_s = 0;
    Air air = Air::pulledToZero;
    double size_V = 0, phase = 0;
};
struct Sag { // of the supply
    double from_s = 0, to_s = 0;
    double factor = 1, ripple = 0, ripple_Hz = 9;
};
struct GroundShift {
    double from_s = 0, to_s = 0, by_V = 0;
};
struct LeadMove {
    double at_s = 0;
    Wire wire = Wire::none;
};
struct Note { // a mark
    double at_s = 0;
    std::string text;
};

struct Scene {
    double nominal_V = 5, reference_V = 5, ground_V = 0.01;
    double sagPerSecond = 0;      // slow, share of the reference
    double groundPerSecond_V = 0; // slow
    double tremor_V = 0.001;      // of a foot that holds
    double stuck_V = -1;          // the signal wire is stuck there; below 0: it is not
    double end_s = 0;
    std::vector<Key> way;
    std::vector<Bump> bumps;
    std::vector<Drop> drops;
    std::vector<Loose> loose;
    std::vector<Sag> sags;
    std::vector<GroundShift> shifts;
    std::vector<Span> keyOff, held, silent;
    std::vector<LeadMove> lead;
    std::vector<Note> marks;

    void sort(); // by time, what is read by time
};

// Volts at the tip against the black lead. Asked at times that never decrease.
class Wires {
public:
    explicit Wires(const Scene& scene) : scene_(scene) {}
    [[nodiscard]] double tip_V(double at_s);
    [[nodiscard]] double lever_V(double at_s); // nominal
    [[nodiscard]] double reference_V(double at_s) const;
    [[nodiscard]] double ground_V(double at_s) const;

private:
    [[nodiscard]] double bump_V(const Bump& bump, double at_s) const;
    const Scene& scene_;
    std::size_t key_ = 0, lead_ = 0, held_ = 0;
};

} // namespace stillwire::hands
