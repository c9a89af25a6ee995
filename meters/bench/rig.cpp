// SPDX-License-Identifier: GPL-3.0-or-later
// The rig's clockwork: what happens when, and the integral between two happenings.
#include "meters/bench/rig.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::bench {
namespace {

constexpr double kSlowTick_s = 10; // the cold fades and the reference wanders by this grain
constexpr double kSame_V = 1e-7;   // closer than any meter shows: the filter has forgotten the event

// Opens only when it is struck: without a rate of its own it draws no chance, so every run stays what it was.
Intermittent struckByHand() {
    Intermittent fault;
    fault.cause = "struck by hand";
    fault.place = Place::signalPin;
    fault.durationMin_s = 0.5;
    return fault;
}

} // namespace

Rig::Rig(const BenchSetup& setup, const std::vector<double>& levels_V, std::size_t rest, const MeterTraits& meter,
         std::uint64_t seed)
    : setup_(setup), level_V_(levels_V), rest_(rest), placeSeed_(seed), chance_(seed, 1), hand_(seed, 2),
      meter_(meter, setup.meter, Random(seed, 3)), pedal_(static_cast<double>(rest)),
      shaft_(static_cast<double>(rest)), faults_(setup.faults.size() + 1), mount_V_(setup.mechanics.mount_V) {
    setup_.faults.push_back(struckByHand());
    refresh();
    drawFaults();
}

void Rig::advanceTo(double t_s, std::vector<Reading>& out) {
    while (now_s_ < t_s) {
        const double due_s = std::min(t_s, nextEvent_s());
        const double to_s = std::min(due_s, stepLimit_s(due_s));
        stretch(to_s);
        now_s_ = to_s;
        happen();
        if (onTheWire_ && now_s_ >= toSeconds(onTheWire_->time) - 1e-9) {
            out.push_back(*onTheWire_);
            onTheWire_.reset();
        }
    }
}

double Rig::nextEvent_s() const {
    double next = looking_ ? meter_.apertureEnd_s() : meter_.apertureStart_s();
    if (onTheWire_) next = std::min(next, toSeconds(onTheWire_->time));
    for (const Path* path : {&shaft_, &side_, &tremor_, &wander_}) next = std::min(next, path->nextKnot(now_s_));
    for (const FaultState& fault : faults_) next = std::min(next, fault.next_s);
    if (busyUntil_s_ > now_s_) next = std::min(next, busyUntil_s_);
    return std::min(next, slowTick_s_ + kSlowTick_s);
}

double Rig::nextArrival_s() const {
    return onTheWire_ ? toSeconds(onTheWire_->time) : meter_.apertureEnd_s() + setup_.meter.latency_s;
}

// While the wiper travels, a stretch is short against what it passes over.
double Rig::stepLimit_s(double to_s) const {
    if (!shaft_.moving(now_s_)) return to_s;
    const double from = shareNow(now_s_), to = shareNow(to_s);
    double grain = setup_.track.roughness_ohm > 0 ? 0.004 : 0.01;
    for (const Intermittent& fault : setup_.faults) {
        if (fault.place != Place::wiper || fault.share < 0) continue;
        const double reach = fault.width + grain;
        if (std::max(from, to) > fault.share - reach && std::min(from, to) < fault.share + reach) {
            grain = std::min(grain, fault.width / 8);
        }
    }
    const double pieces = std::ceil(std::abs(to - from) / grain);
    return pieces <= 1 ? to_s : now_s_ + (to_s - now_s_) / pieces;
}

void Rig::stretch(double to_s) {
    const double length_s = to_s - now_s_;
    if (length_s <= 0) return;
    const bool moving =
        shaft_.moving(now_s_) || side_.moving(now_s_) || tremor_.moving(now_s_) || wander_.moving(now_s_);
    CircuitState end = state_, cleanEnd = clean_;
    if (moving) {
        const double share = shareNow(to_s);
        end = solve(values(share, to_s, true));
        if (diverged_) cleanEnd = solve(values(share, to_s, false));
    }
    const Passage passage = pass(state_, end, capacitor_V_, length_s);
    const double integral_Vs = looking_ ? shownIntegral_Vs(state_, end, passage, length_s) : 0;
    capacitor_V_ = passage.end_V;
    state_ = end;
    sum_Vs_ += integral_Vs;
    if (!diverged_) {
        cleanSum_Vs_ += integral_Vs;
        cleanCapacitor_V_ = capacitor_V_;
        return;
    }
    const Passage clean = pass(clean_, cleanEnd, cleanCapacitor_V_, length_s);
    if (looking_) cleanSum_Vs_ += shownIntegral_Vs(clean_, cleanEnd, clean, length_s);
    cleanCapacitor_V_ = clean.end_V;
    clean_ = cleanEnd;
    const double depth_V = state_.shown_V(capacitor_V_) - clean_.shown_V(cleanCapacitor_V_);
    bool anyOpen = false;
    for (const FaultState& fault : faults_) {
        if (!fault.open) continue;
        anyOpen = true;
        double& deepest_V = events_[fault.event].depth_V;
        if (std::abs(depth_V) > std::abs(deepest_V)) deepest_V = depth_V;
    }
    if (!anyOpen && std::abs(capacitor_V_ - cleanCapacitor_V_) < kSame_V) diverged_ = false;
}

void Rig::happen() {
    bool circuitChanged = false, ratesChanged = false;
    if (!tremor_.moving(now_s_) && (held_ || tremor_.target() != 0)) nextTremor();
    if (now_s_ >= slowTick_s_ + kSlowTick_s - 1e-9) {
        slowTick_s_ = now_s_;
        circuitChanged = ratesChanged = true;
        if (setup_.reference.wander_V > 0) {
            wander_.goTo(now_s_, hand_.uniform(0, setup_.reference.wander_V), hand_.uniform(3, 9));
        }
    }
    if (busyUntil_s_ > 0 && now_s_ >= busyUntil_s_) {
        busyUntil_s_ = 0;
        ratesChanged = true;
    }
    if (travelling_ && !shaft_.moving(now_s_)) {
        travelling_ = false;
        ratesChanged = true;
    }
    for (std::size_t i = 0; i < faults_.size(); ++i) {
        if (now_s_ < faults_[i].next_s) continue;
        toggle(i);
        circuitChanged = true;
    }
    const bool gated = travelling_ && !faults_.empty();
    if (ratesChanged || gated) drawFaults();
    if (circuitChanged) refresh();
    if (looking_ && now_s_ >= meter_.apertureEnd_s()) {
        finishLook();
    } else if (!looking_ && now_s_ >= meter_.apertureStart_s()) {
        looking_ = true;
        sum_Vs_ = cleanSum_Vs_ = 0;
        if (!diverged_) inLook_.clear();
    }
}

void Rig::finishLook() {
    const double length_s = meter_.apertureEnd_s() - meter_.apertureStart_s();
    double mean_V = sum_Vs_ / length_s;
    const double depth_V = (sum_Vs_ - cleanSum_Vs_) / length_s;
    for (const std::size_t event : inLook_) {
        if (std::abs(depth_V) > kSame_V) events_[event].touched.push_back({readings_, depth_V});
    }
    if (!diverged_) inLook_.clear();
    // A lead in the air picks up what is about (common practice, no source: a few millivolts into 10 Mohm).
    if (wire_ == Wire::none) mean_V += 0.004 * hand_.normal();
    onTheWire_ = meter_.finish(mean_V);
    ++readings_;
    looking_ = false;
}

void Rig::toggle(std::size_t index) {
    FaultState& state = faults_[index];
    const Intermittent& fault = setup_.faults[index];
    if (state.open) {
        state.open = false;
        events_[state.event].to_s = now_s_;
        const double rate = rate_per_s(fault);
        state.next_s = rate > 0 ? now_s_ + chance_.exponential(1 / rate) : kNever_s;
        return;
    }
    state.open = true;
    state.ohm = chance_.logUniform(fault.ohmMin, fault.ohmMax);
    state.next_s = now_s_ + chance_.logUniform(fault.durationMin_s, fault.durationMax_s);
    state.event = events_.size();
    events_.push_back({fault.cause, now_s_, state.next_s, 0, step_, pose_, {}});
    inLook_.push_back(state.event);
    if (!diverged_) {
        diverged_ = true;
        cleanCapacitor_V_ = capacitor_V_;
        clean_ = state_;
    }
}

void Rig::strike() {
    if (faults_.back().open) return;
    toggle(faults_.size() - 1);
    refresh();
}

double Rig::rate_per_s(const Intermittent& fault) const {
    if (!keyOn_ && wire_ == Wire::none) return 0;
    double rate = fault.idle_per_s;
    const double strength = busyUntil_s_ > now_s_ ? 1.0 : kHeldActivity;
    const bool stilled = connectorHeld_ && fault.place != Place::wiper;
    if (leaning_ != 0 && !stilled && fault.side * leaning_ >= 0) rate += fault.shaft_per_s * strength;
    if (section_ != 0 && (fault.section == 0 || fault.section == section_) && fault.side * flexing_ >= 0) {
        rate += fault.harness_per_s * strength;
    }
    if (shaft_.moving(now_s_)) rate += fault.motion_per_s;
    if (fault.place == Place::wiper && fault.share >= 0 &&
        std::abs(shareNow(now_s_) - fault.share) > 0.5 * fault.width) {
        return 0;
    }
    if (fault.wipesToClear > 0) rate *= std::exp(-wipes_ / fault.wipesToClear);
    return rate * (fault.warm + (1 - fault.warm) * cold());
}

// The wait for the next opening is exponential, so drawing it anew whenever a rate changes changes no law.
void Rig::drawFaults() {
    bool closed = false;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
        const Intermittent& fault = setup_.faults[i];
        const bool offSpot = fault.place == Place::wiper && fault.share >= 0 &&
                             std::abs(shareNow(now_s_) - fault.share) > 0.5 * fault.width;
        if (faults_[i].open && offSpot) { // the wiper left the spot: contact again
            toggle(i);
            closed = true;
        }
        if (faults_[i].open) continue;
        const double rate = rate_per_s(fault);
        faults_[i].next_s = rate > 0 ? now_s_ + chance_.exponential(1 / rate) : kNever_s;
    }
    if (closed) refresh();
}

void Rig::refresh() {
    const double share = shareNow(now_s_);
    state_ = solve(values(share, now_s_, true));
    if (diverged_) clean_ = solve(values(share, now_s_, false));
}

} // namespace stillwire::bench
