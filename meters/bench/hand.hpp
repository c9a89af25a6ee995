// SPDX-License-Identifier: GPL-3.0-or-later
// The hand at the rig: heeds marks and prompts as a person does, a little late and never twice alike.
#pragma once

#include "core/domain/mark.hpp"
#include "core/procedure/procedure.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/bench/random.hpp"
#include "meters/bench/rig.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire::bench {

struct HandHabits {
    double reactionMin_s = 0.20, reactionMax_s = 0.40; // from the word to the move
    double leadMove_s = 2.5;                           // from one wire to the next
    double press_s = 0.4;
    double sweep_s = 20; // from one end of the travel to the other
    // Waits this long for the second, warm look, then hurries it on; a live demo is shorter than ten minutes.
    double warmPatience_s = kNever_s;
};

class Hand {
public:
    Hand(Rig& rig, const Sheet& sheet, HandHabits habits, std::uint64_t seed);

    // A mark was made (by the procedure, or by a script): what it asks for is done after a reaction time.
    void heed(const Mark& mark);
    // The same from a live procedure's prompt, at every tick: moves the hand, and returns what the person answers.
    std::vector<Command> obey(const Prompt& prompt, Time now);
    // Puts the red lead on another wire; it is on none meanwhile. Returns when it will be there, seconds.
    double reach(Wire wire);

    [[nodiscard]] double nextDue_s() const; // kNever_s: nothing planned
    void act();                             // does what is due at the rig's time
    [[nodiscard]] bool busy() const { return !plan_.empty(); }
    [[nodiscard]] double sweepTakes_s() const; // from the word, at most

    // Truth of the hand. spans() is closed at the rig's time.
    [[nodiscard]] std::vector<TruthSpan> spans() const;
    [[nodiscard]] const std::vector<TruthVisit>& visits() const { return visits_; }
    [[nodiscard]] int hangs() const { return hangs_; }

private:
    struct Deed {
        double at_s;
        std::function<void()> doIt;
    };
    void plan(double in_s, std::function<void()> deed);
    void span(const char* kind);
    void onStep(Step step);
    void onPose(const PosePlace& place);
    void tellRig(); // the step and the pose, for truth
    void onPosition(std::string_view name);
    void handsOff();
    void arrive(std::string_view position, double in_s);
    [[nodiscard]] double reaction_s() { return random_.uniform(habits_.reactionMin_s, habits_.reactionMax_s); }
    void sweep();
    [[nodiscard]] std::vector<double> sweepStops() const; // ends in order, rest last
    [[nodiscard]] double sweepPiece_s(double from, double to) const;
    void say(double in_s, Command command);
    void enter(const Prompt& prompt); // another step, or the same one anew
    void follow(const Prompt& prompt);
    void turnTowards(const Prompt& prompt);

    Rig& rig_;
    const Sheet& sheet_;
    HandHabits habits_;
    Random random_;
    std::vector<Deed> plan_; // in order of time
    std::optional<Step> step_;
    PosePlace pose_;
    std::vector<TruthSpan> spans_;
    std::vector<TruthVisit> visits_;
    int hangs_ = 0;
    // What was last obeyed.
    std::optional<Step> promptStep_;
    int promptNumber_ = 0;
    bool leading_ = false, off_ = false, offering_ = false, sweeping_ = false;
    int nudges_ = 0;
    double entered_s_ = 0, turned_s_ = 0;
    Time poseSince_{-1};
    std::string at_; // the position last asked for
    std::vector<Command> words_;
    std::uint64_t moves_ = 0; // a later move calls off the arrival of an earlier one
};

} // namespace stillwire::bench
