// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/domain/timeline.hpp"

#include <algorithm>

namespace stillwire {

namespace {

Wiggled shakenAt(const PosePlace& where, std::optional<Step> step) {
    const Wiggled wiggled = step ? traits(*step).wiggled : Wiggled::asMarked;
    if (wiggled != Wiggled::asMarked) return wiggled;
    return where.ofShaft() ? Wiggled::shaft : Wiggled::harness;
}

template <class Spans> void closeLast(Spans& spans, Time time) {
    if (spans.empty() || spans.back().closed) return;
    spans.back().to = time;
    spans.back().closed = true;
}

} // namespace

Timeline::Timeline(const Sheet& sheet) : sheet_(&sheet) { contexts_.emplace_back(); }

std::size_t Timeline::indexAt(Time time) const {
    std::size_t index = contexts_.size() - 1;
    while (index > 0 && contexts_[index].from > time) --index;
    return index;
}

bool Timeline::undone(int stepVisit) const {
    return stepVisit >= 0 && visits_[static_cast<std::size_t>(stepVisit)].undone;
}

bool Timeline::did(Step step) const {
    return std::any_of(visits_.begin(), visits_.end(),
                       [&](const StepVisit& v) { return v.step == step && !v.undone; });
}

void Timeline::countReadings(int count) {
    if (const int pose = now().poseIndex; pose >= 0) poses_[static_cast<std::size_t>(pose)].readings += count;
}

void Timeline::countHeld(int index, const Reading* first, std::size_t count, double held_V, double lean_V) {
    if (index < 0) return;
    Pose& pose = poses_[static_cast<std::size_t>(index)];
    for (const Reading* r = first; r != first + count; ++r) {
        pose.heldSum_V += r->volts_V;
        if (r->volts_V - held_V >= lean_V) ++pose.leansUp;
        if (held_V - r->volts_V >= lean_V) ++pose.leansDown;
        ++pose.held;
    }
}

void Timeline::closePose(Time time) { closeLast(poses_, time); }

void Timeline::closeStep(Time time) {
    closePose(time);
    closeLast(visits_, time);
}

// What each kind of mark changes; true if the level may follow.
struct Timeline::Taker {
    Timeline& line;
    Time time;
    Context next; // as it stands, from the mark on

    bool add(bool levelMayFollow) const {
        line.contexts_.push_back(next);
        return levelMayFollow;
    }

    bool operator()(const StepMark& mark) {
        const StepTraits& step = traits(mark.step);
        line.closeStep(time);
        line.visits_.push_back({step.step, time, time, false, false});
        line.armHeld_ = false;
        const Wire before = next.wire;
        next.step = step.step;
        next.stepVisit = static_cast<int>(line.visits_.size()) - 1;
        next.poseIndex = -1;
        next.wire = step.wire;
        next.motion = line.keyOff_ ? ExpectedMotion::free : step.motion;
        // After the leads moved from one wire to another the level is elsewhere, and nobody is to blame.
        next.moveExpected = next.wire != before;
        if (step.warmth == Warmth::warm) next.warm = true;
        if (step.warmth == Warmth::cold) next.warm = false;
        // Every step but those that say otherwise begins with the pedal at rest.
        const bool rests = next.wire == Wire::signal && next.motion == ExpectedMotion::still;
        next.position = rests ? line.indexOf(line.sheet_->rest()) : -1;
        next.heldByOperator = false;
        return add(true);
    }
    bool operator()(const StepEndMark&) {
        line.closeStep(time);
        next.step.reset();
        next.poseIndex = -1;
        next.position = -1;
        next.heldByOperator = false;
        next.wire = Wire::signal;
        next.motion = ExpectedMotion::free;
        return add(true);
    }
    bool operator()(const PoseMark& mark) {
        line.closePose(time);
        next.poseIndex = -1;
        if (!next.step || traits(*next.step).wiggles()) {
            Pose pose;
            pose.from = pose.to = time;
            pose.where = mark.place;
            pose.shaken = shakenAt(mark.place, next.step);
            pose.armHeld = line.armHeld_;
            pose.step = next.step;
            pose.stepVisit = next.stepVisit;
            line.poses_.push_back(std::move(pose));
            next.poseIndex = static_cast<int>(line.poses_.size()) - 1;
        }
        return add(false);
    }
    bool operator()(const PositionMark& mark) {
        line.closePose(time);
        const Position* position = line.sheet_->find(mark.name);
        const int index = position ? line.indexOf(*position) : -1;
        next.moveExpected = index != next.position || index < 0;
        next.position = index;
        next.heldByOperator = position && !position->rest;
        next.poseIndex = -1;
        if (next.motion != ExpectedMotion::free && next.motion != ExpectedMotion::sweep)
            next.motion = ExpectedMotion::positions;
        return add(true);
    }
    bool operator()(const KeyMark& mark) {
        line.keyOff_ = next.keyOff = !mark.on;
        if (mark.on) {
            next.motion = next.step        ? traits(*next.step).motion
                          : line.anyStep() ? ExpectedMotion::free
                                           : ExpectedMotion::unmarked;
            next.moveExpected = true;
        } else {
            next.motion = ExpectedMotion::free;
            next.poseIndex = -1;
            line.closePose(time);
        }
        return add(true);
    }
    bool operator()(const SkipMark& mark) {
        line.skipped_.push_back(mark.step);
        // Skipped as it ran: no evidence either way.
        if (next.step == mark.step) line.visits_.back().undone = true;
        return false;
    }
    bool operator()(const UndoMark& mark) {
        // The newest visit that still counts; undoing a skip takes the skip back.
        const auto visit = std::find_if(line.visits_.rbegin(), line.visits_.rend(),
                                        [&](const StepVisit& v) { return v.step == mark.step && !v.undone; });
        if (visit != line.visits_.rend()) visit->undone = true;
        std::erase(line.skipped_, mark.step);
        return false;
    }
    bool operator()(const TurnMark& mark) {
        next.turns += mark.turns;
        ++next.turnCount;
        return add(false);
    }
    bool operator()(const ArmMark& mark) {
        if (mark.arm == Arm::held || mark.arm == Arm::free) {
            line.armHeld_ = mark.arm == Arm::held;
            return false;
        }
        line.armOnStop_ = mark.arm == Arm::onStop;
        line.armAnswered_ = time;
        return false;
    }
    // What is read says so by itself.
    bool operator()(const ProbeMark&) const { return false; }
    bool operator()(const GapMark&) const { return false; }
    bool operator()(const NoteMark&) const { return false; }
    bool operator()(const UnknownMark&) const { return false; }
};

bool Timeline::push(const Mark& mark) {
    Taker taker{*this, mark.time, now()};
    taker.next.from = mark.time;
    taker.next.moveExpected = false;
    return std::visit(taker, mark.content());
}

} // namespace stillwire
