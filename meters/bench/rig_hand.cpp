// SPDX-License-Identifier: GPL-3.0-or-later
// What a hand does to the rig, and what stands still under it: the mechanics and the values of the circuit.
#include "meters/bench/rig.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::bench {
namespace {

constexpr double kBurst_s = 0.8;   // a new pose shakes the part this long
constexpr double kLean_s = 0.15;   // to lean over
constexpr double kSpring_s = 0.25; // the spring's way back

} // namespace

double Rig::cold() const {
    return keyOn_s_ > 0 || keyOn_ ? std::exp(-(now_s_ - keyOn_s_) / setup_.mechanics.soak_s) : 1.0;
}

double Rig::shareAt(double travel) const {
    const auto last = level_V_.size() - 1;
    const double place = std::clamp(travel, 0.0, static_cast<double>(last));
    const auto i = std::min(static_cast<std::size_t>(place), last - 1);
    const double f = place - static_cast<double>(i);
    const auto moved_V = [&](std::size_t k) {
        const double share = k < setup_.mechanics.share.size() ? setup_.mechanics.share[k] : 1.0;
        return level_V_[k] + share * mount_V_;
    };
    const double level_V = moved_V(i) + f * (moved_V(i + 1) - moved_V(i));
    const double whole_ohm = setup_.track.ohm + setup_.track.endTop_ohm + setup_.track.endBottom_ohm;
    return (level_V / setup_.nominal_V * whole_ohm - setup_.track.endBottom_ohm) / setup_.track.ohm;
}

double Rig::shareNow(double t_s) const {
    const Mechanics& m = setup_.mechanics;
    const double lean_V = armHeld_ && !m.leanStays ? 0 : m.lean_V * std::max(0.0, side_.at(t_s));
    const double extra_V = m.play_V * side_.at(t_s) + lean_V + tremor_.at(t_s) + m.coldShift_V * cold();
    return std::clamp(shareAt(shaft_.at(t_s)) + extra_V / setup_.nominal_V, 0.0, 1.0);
}

double Rig::healthyContact_ohm(double share) const {
    const Track& track = setup_.track;
    // A random value per cell of the track, straight between cells; worn tracks have a finer, larger one on top.
    const auto along = [&](double cells, std::uint64_t layer) {
        const double place = share * cells;
        const auto cell = static_cast<std::int64_t>(std::floor(place));
        const double f = place - static_cast<double>(cell);
        const double a = uniformAt(placeSeed_ ^ layer, cell), b = uniformAt(placeSeed_ ^ layer, cell + 1);
        return a + f * (b - a);
    };
    double ohm = track.contact_ohm * (1 + track.contactVariation * (2 * along(100, 0x51) - 1));
    if (track.roughness_ohm > 0) ohm += track.roughness_ohm * along(250, 0x52);
    return ohm;
}

CircuitValues Rig::values(double share, double t_s, bool withFaults) const {
    CircuitValues v;
    v.reference_V = keyOn_ ? setup_.nominal_V - setup_.reference.drop_V - wander_.at(t_s) : 0;
    v.referencePath_ohm = setup_.reference.path_ohm;
    v.groundPath_ohm = setup_.ground.path_ohm;
    v.groundCurrent_A = keyOn_ ? setup_.ground.otherCurrent_A : 0;
    v.track_ohm = setup_.track.ohm;
    v.endTop_ohm = setup_.track.endTop_ohm;
    v.endBottom_ohm = setup_.track.endBottom_ohm;
    v.share = share;
    v.contact_ohm = healthyContact_ohm(share);
    v.harness_ohm = setup_.harness_ohm;
    v.bias_ohm = setup_.controller.bias_ohm;
    v.bias_V = setup_.controller.biasUp && keyOn_ ? setup_.nominal_V : 0;
    v.series_ohm = setup_.controller.series_ohm;
    v.capacitance_F = setup_.controller.capacitance_F;
    v.meter_ohm = setup_.meter.input_ohm;
    v.probe = wire_;
    v.side = setup_.side;
    v.black = setup_.black;
    if (!withFaults) return v;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
        if (!faults_[i].open) continue;
        const double ohm = faults_[i].ohm;
        switch (setup_.faults[i].place) {
        case Place::wiper:
        case Place::signalPin: v.contact_ohm += ohm; break;
        case Place::signalWire: v.harness_ohm += ohm; break;
        case Place::referenceWire: v.referencePath_ohm += ohm; break;
        case Place::groundWire: v.groundPath_ohm += ohm; break;
        case Place::shortToGround:
            v.short_ohm = ohm;
            v.short_V = 0;
            break;
        case Place::shortToSupply:
            v.short_ohm = ohm;
            v.short_V = setup_.supply_V > 0 ? setup_.supply_V : v.reference_V;
            break;
        }
    }
    return v;
}

double Rig::settled_V(Wire wire) const {
    CircuitValues v = values(shareAt(shaft_.at(now_s_)), now_s_, false);
    v.probe = wire;
    return solve(v).settled_V();
}

double Rig::trueLevel_V(double travel) const {
    const double cold_V = setup_.mechanics.coldShift_V * cold();
    CircuitValues v = values(shareAt(travel) + cold_V / setup_.nominal_V, now_s_, false);
    const auto shown = [&](Wire wire) {
        v.probe = wire;
        return solve(v).settled_V();
    };
    const double raw_V = shown(Wire::signal), r_V = shown(Wire::reference), g_V = shown(Wire::ground);
    return (raw_V - g_V) * setup_.nominal_V / (r_V - g_V);
}

void Rig::key(bool on) {
    if (on && !keyOn_ && keyOn_s_ == 0) keyOn_s_ = now_s_;
    keyOn_ = on;
    refresh();
    drawFaults();
}

void Rig::probe(Wire wire) {
    wire_ = wire;
    refresh();
}

void Rig::moved() {
    const double span_V = std::abs(level_V_.back() - level_V_.front());
    const double perTravel_V = std::max(span_V / static_cast<double>(level_V_.size() - 1), 0.01);
    shaft_.follow(now_s_, pedal_, setup_.mechanics.backlash_V / perTravel_V);
    travelling_ = true;
    wipes_ += 1;
    drawFaults();
}

void Rig::push(double travel, double length_s) {
    held_ = true;
    hanging_ = false;
    if (!tremor_.moving(now_s_)) nextTremor();
    pedal_.ease(now_s_, travel, length_s);
    moved();
}

void Rig::drag(double travel, double length_s) {
    held_ = true;
    hanging_ = false;
    if (!tremor_.moving(now_s_)) nextTremor();
    pedal_.goTo(now_s_, travel, length_s);
    moved();
}

void Rig::letGo() {
    const double rest = static_cast<double>(rest_), from = pedal_.at(now_s_);
    held_ = false;
    hanging_ = from != rest && chance_.chance(setup_.mechanics.hangChance);
    double to = rest;
    if (hanging_) {
        const std::size_t towards = from > rest ? rest_ + 1 : rest_ - 1;
        const double perTravel_V = std::max(std::abs(level_V_[towards] - level_V_[rest_]), 0.01);
        const double short_ = std::min(setup_.mechanics.hang_V / perTravel_V * chance_.uniform(0.8, 1.2), 0.9);
        to = rest + (from > rest ? short_ : -short_);
    }
    pedal_.ease(now_s_, to, kSpring_s);
    moved();
}

void Rig::settleArm() {
    held_ = false;
    hanging_ = false;
    pedal_.ease(now_s_, static_cast<double>(rest_), 0.4);
    moved();
}

void Rig::leanOn(double side) {
    if (side == leaning_) return;
    leaning_ = side;
    side_.goTo(now_s_, side, kLean_s * hand_.uniform(0.7, 1.4));
    busyUntil_s_ = side != 0 ? now_s_ + kBurst_s : 0;
    wipes_ += side != 0 ? 0.5 : 0; // a dither wipes less than a stroke
    drawFaults();
}

void Rig::holdConnector(bool held) {
    connectorHeld_ = held;
    drawFaults();
}

void Rig::holdArm(bool held) {
    if (held == armHeld_) return;
    armHeld_ = held;
    refresh();
}

void Rig::flex(int section, double side) {
    if (section == section_ && side == flexing_) return;
    section_ = side != 0 ? section : 0;
    flexing_ = side;
    busyUntil_s_ = side != 0 ? now_s_ + kBurst_s : 0;
    wipes_ += side != 0 && section == 1 ? 0.5 : 0; // a connector's contacts rub
    drawFaults();
}

void Rig::turn(double partTurns) {
    mount_V_ += partTurns * setup_.mechanics.perTurn_V;
    refresh();
    drawFaults();
}

void Rig::context(const std::string& step, const std::string& pose) {
    step_ = step;
    pose_ = pose;
}

// Muscle tremor as a leaning random walk with a knot every 30 to 90 ms (about 8-12 Hz is physiological; from memory).
void Rig::nextTremor() {
    const double deviation_V = setup_.mechanics.tremor_V;
    if (deviation_V <= 0) return;
    const double target = held_ ? 0.7 * tremor_.at(now_s_) + 0.714 * deviation_V * hand_.normal() : 0;
    tremor_.goTo(now_s_, target, hand_.uniform(0.03, 0.09));
}

} // namespace stillwire::bench
