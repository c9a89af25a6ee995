// SPDX-License-Identifier: GPL-3.0-or-later
// Where the hand was, from the marks alone: step, pose, position, wire, by time.
#pragma once

#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// What was going on from one mark to the next.
struct Context {
    Time from{0};
    std::optional<Step> step;
    int stepVisit = -1; // counts the steps opened, from 0; -1: none yet
    Wire wire = Wire::signal;
    ExpectedMotion motion = ExpectedMotion::unmarked;
    int position = -1;           // index into the sheet; -1: not said
    bool heldByOperator = false; // at a working position
    int poseIndex = -1;          // counts the poses of the capture; -1: not in a pose
    bool moveExpected = false;   // a movement was asked for at `from`
    bool warm = false;           // in or after warm-repeat
    bool keyOff = false;         // every wire is dead
    double turns = 0;            // sum of turns so far, signed
    int turnCount = 0;           // how many were made
};

// One pose: a held wiggle position.
struct Pose {
    Time from{0}, to{0};
    bool closed = false;
    PosePlace where;
    Wiggled shaken = Wiggled::nothing; // never asMarked: what the pose itself says
    bool armHeld = false;              // by the other hand, so that it cannot lean
    std::optional<Step> step;
    int stepVisit = -1;
    int readings = 0;
    double heldSum_V = 0; // of its readings near the held level
    int held = 0;
    int leansUp = 0, leansDown = 0; // of those: to one side, though within the threshold
};

struct StepVisit {
    Step step = Step::hookUp;
    Time from{0}, to{0};
    bool closed = false;
    bool undone = false;
};

class Timeline {
public:
    explicit Timeline(const Sheet& sheet);

    // True if the context changed in a way the level may follow.
    bool push(const Mark& mark);
    // Readings in the pose in force, if there is one; and those of them that are near the held level.
    void countReadings(int count);
    void countHeld(int pose, const Reading* first, std::size_t count, double held_V, double lean_V);

    [[nodiscard]] const Context& now() const { return contexts_.back(); }
    [[nodiscard]] const Context& at(Time time) const { return contexts_[indexAt(time)]; }
    [[nodiscard]] std::size_t indexAt(Time time) const;
    [[nodiscard]] const Context& context(int index) const { return contexts_[static_cast<std::size_t>(index)]; }
    [[nodiscard]] std::size_t count() const { return contexts_.size(); } // grows with every context
    [[nodiscard]] const std::vector<Pose>& poses() const { return poses_; }
    [[nodiscard]] const std::vector<StepVisit>& stepVisits() const { return visits_; }
    [[nodiscard]] bool undone(int stepVisit) const;
    [[nodiscard]] bool anyStep() const { return !visits_.empty(); }
    [[nodiscard]] bool did(Step step) const;
    [[nodiscard]] std::optional<bool> armOnStop() const { return armOnStop_; }
    [[nodiscard]] Time armAnswered() const { return armAnswered_; } // when
    [[nodiscard]] const std::vector<Step>& skippedSteps() const { return skipped_; }

private:
    struct Taker; // of one mark

    void closeStep(Time time);
    void closePose(Time time);
    [[nodiscard]] int indexOf(const Position& p) const { return static_cast<int>(&p - sheet_->positions.data()); }

    const Sheet* sheet_;
    std::vector<Context> contexts_;
    std::vector<Pose> poses_;
    std::vector<StepVisit> visits_;
    std::vector<Step> skipped_;
    std::optional<bool> armOnStop_;
    Time armAnswered_{0};
    bool keyOff_ = false, armHeld_ = false;
};

} // namespace stillwire
