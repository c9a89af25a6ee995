// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/hand.hpp"

#include "meters/bench/faults.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace stillwire::bench {
namespace {
constexpr double kTurnRound_s = 0.7; // at an end of the sweep

// The load on the contact, of a full push to a side. Along the shaft and by a tap it is less: invented.
double leanOf(Side side) {
    switch (side) {
    case Side::left: return -1;
    case Side::right: return 1;
    case Side::in: return -0.8;
    case Side::out: return 0.8;
    case Side::tap: return 0.6;
    }
    return 0;
}
} // namespace

Hand::Hand(Rig& rig, const Sheet& sheet, HandHabits habits, std::uint64_t seed)
    : rig_(rig), sheet_(sheet), habits_(habits), random_(seed, 4) {
    spans_.push_back({"still", 0, 0});
}

void Hand::plan(double in_s, std::function<void()> deed) {
    const double at_s = rig_.now_s() + in_s;
    const auto place = std::upper_bound(plan_.begin(), plan_.end(), at_s,
                                        [](double t, const Deed& planned) { return t < planned.at_s; });
    plan_.insert(place, {at_s, std::move(deed)});
}

double Hand::nextDue_s() const { return plan_.empty() ? kNever_s : plan_.front().at_s; }

void Hand::act() {
    while (!plan_.empty() && plan_.front().at_s <= rig_.now_s() + 1e-9) {
        const auto deed = std::move(plan_.front().doIt);
        plan_.erase(plan_.begin());
        deed();
    }
}

void Hand::span(const char* kind) {
    if (spans_.back().kind == kind) return;
    spans_.push_back({kind, rig_.now_s(), 0});
}

std::vector<TruthSpan> Hand::spans() const {
    std::vector<TruthSpan> out;
    for (std::size_t i = 0; i < spans_.size(); ++i) {
        TruthSpan span = spans_[i];
        span.to_s = i + 1 < spans_.size() ? spans_[i + 1].from_s : rig_.now_s();
        if (span.to_s > span.from_s) out.push_back(span);
    }
    return out;
}

void Hand::heed(const Mark& mark) {
    if (const auto* step = mark.as<StepMark>()) onStep(step->step);
    if (mark.as<StepEndMark>()) {
        step_.reset();
        handsOff();
    }
    if (const auto* pose = mark.as<PoseMark>()) onPose(pose->place);
    if (const auto* position = mark.as<PositionMark>()) onPosition(position->name);
    if (const auto* key = mark.as<KeyMark>()) rig_.key(key->on);
    if (const auto* arm = mark.as<ArmMark>()) rig_.holdArm(arm->arm == Arm::held);
    if (const auto* turn = mark.as<TurnMark>()) {
        span("travel");
        plan(reaction_s(), [this, turns = std::trunc(turn->turns)] { rig_.turn(turns); });
        plan(1.0, [this] { span("still"); });
    }
}

double Hand::reach(Wire wire) {
    if (rig_.probed() == wire) return rig_.now_s();
    span("lead off");
    rig_.probe(Wire::none);
    const double takes_s = habits_.leadMove_s * random_.uniform(0.8, 1.3);
    plan(takes_s, [this, wire] {
        rig_.probe(wire);
        span("still");
    });
    return rig_.now_s() + takes_s;
}

void Hand::handsOff() {
    pose_ = {};
    tellRig();
    plan(0.15, [this] {
        rig_.leanOn(0);
        rig_.flex(0, 0);
        if (spans_.back().kind == "wiggle") span("still");
    });
}

void Hand::tellRig() { rig_.context(step_ ? std::string(stepName(*step_)) : "", pose_.text()); }

void Hand::onStep(Step step) {
    step_ = step;
    handsOff();
    rig_.holdConnector(step == Step::connectorHeld);
    rig_.holdArm(false);
    const Wire wanted = traits(step).wire;
    if (rig_.probed() != wanted && rig_.probed() != Wire::none) { // none: it is on its way
        plan(reaction_s(), [this, wanted] { reach(wanted); });
    }
    if (step == Step::sweep) plan(reaction_s() + 1.0, [this] { sweep(); });
    if (step == Step::lift) plan(reaction_s() + 2.5, [this] { rig_.settleArm(); });
}

void Hand::onPose(const PosePlace& place) {
    pose_ = place;
    tellRig();
    const double side = leanOf(place.side().value_or(Side::right));
    int section = step_ == Step::wiggleHarness ? 1 : 0;
    const std::string_view number = place.section();
    std::from_chars(number.data(), number.data() + number.size(), section);
    plan(reaction_s(), [this, side, section] {
        span("wiggle");
        if (step_ == Step::leadCheck) return; // nothing moves but the lead
        if (section > 0) {
            rig_.flex(section, side);
        } else {
            rig_.leanOn(side);
        }
    });
}

void Hand::arrive(std::string_view position, double in_s) {
    const std::uint64_t move = ++moves_;
    plan(in_s, [this, move, name = std::string(position)] {
        if (move != moves_) return;
        span("still");
        visits_.push_back({name, rig_.now_s(), rig_.trueLevel_V(rig_.shaftTravel()), rig_.hanging()});
        if (rig_.hanging()) ++hangs_;
    });
}

void Hand::onPosition(std::string_view name) {
    const auto found = std::find_if(sheet_.positions.begin(), sheet_.positions.end(),
                                    [&](const Position& p) { return p.name == name; });
    if (found == sheet_.positions.end()) return;
    const auto index = static_cast<std::size_t>(found - sheet_.positions.begin());
    const bool rest = index == restIndex(sheet_);
    plan(reaction_s(), [this, index, rest, wanted = std::string(name)] {
        const double target = static_cast<double>(index);
        if (rest && rig_.travel() == target) { // there already
            arrive(wanted, 0);
            return;
        }
        span("travel");
        const double takes_s = habits_.press_s * random_.uniform(0.8, 1.4);
        if (rest) {
            rig_.letGo();
        } else {
            rig_.push(target, takes_s);
        }
        arrive(wanted, rest ? 0.3 : takes_s);
    });
}

std::vector<double> Hand::sweepStops() const {
    const double last = static_cast<double>(sheet_.positions.size() - 1);
    const double rest = static_cast<double>(restIndex(sheet_));
    // From rest to one end, to the other and back over it all, so that every place is passed both ways.
    if (rest > 0 && rest < last) return {0, last, 0, rest};
    return {rest > 0 ? 0 : last, rest};
}

double Hand::sweepPiece_s(double from, double to) const {
    return habits_.sweep_s * std::abs(to - from) / static_cast<double>(sheet_.positions.size() - 1);
}

double Hand::sweepTakes_s() const {
    double at = static_cast<double>(restIndex(sheet_)), all_s = habits_.reactionMax_s + 1;
    for (const double stop : sweepStops()) {
        all_s += sweepPiece_s(at, stop) + kTurnRound_s;
        at = stop;
    }
    return all_s;
}

void Hand::sweep() {
    ++moves_;
    span("travel");
    double at = static_cast<double>(restIndex(sheet_)), in_s = 0;
    for (const double stop : sweepStops()) {
        const double takes_s = sweepPiece_s(at, stop);
        plan(in_s, [this, stop, takes_s] { rig_.drag(stop, takes_s); });
        in_s += takes_s + kTurnRound_s;
        at = stop;
    }
    plan(in_s, [this] {
        rig_.settleArm();
        span("still");
    });
}

} // namespace stillwire::bench
