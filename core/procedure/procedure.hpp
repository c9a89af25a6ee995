// SPDX-License-Identifier: GPL-3.0-or-later
// Leads a person through the steps. Takes stamped events, returns prompts and the marks to record; never runs in
// replay.
#pragma once

#include "core/base/sentence.hpp"
#include "core/domain/mark.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

// What a person may ask for. next: go on (Space); before the evidence is in it hurries the pose or the wait on, and
// never ends a step short: skip does. back: undo the step that just ended by itself, or start this one again.
// skip: leave the step out. stop: end here. turnIn/turnOut: one part-turn of the sensor made while adjusting.
// lift*: answers to the lift question. offer*: answers to Prompt::question.
enum class Command { next, back, skip, stop, turnIn, turnOut, liftOnStop, liftOffStop, offerYes, offerNo };

// An answer the person may give now, with its words.
struct Choice {
    Command command = Command::next;
    Sentence says;
};

// What a person is asked before the run goes on; the answers are in Prompt::choices.
enum class Question { none, badReference, badGround, finish };

// A pose that is asked for.
struct AskedPose {
    PosePlace place{};
    double for_s = 0; // how long in all
    Time since{0};
};

// How one moment of the procedure looks to the person. The sentences are for people alone, to be translated and
// spoken: whatever a program wants to know stands beside them.
struct Prompt {
    std::optional<Step> step;       // none before the start and after the end
    int number = 0, of = 0;         // "step 5 of 11"
    Sentence title;                 // "Wiggle the shaft"
    std::vector<Sentence> cautions; // shown before the hand moves
    Sentence instruction;           // one sentence: what the hand does
    Sentence detail;                // a second line, may be empty
    Sentence why;
    std::string drawing; // name of the step drawing in resources/drawings, without .svg
    Sentence wanted;     // "11 more poses"; empty: nothing more
    double progress = 0; // 0 to 1 of what the step wants
    // A pose being held, and its word ("hold left").
    std::optional<AskedPose> asked;
    Sentence pose;
    std::string position;        // the sheet's name of the position to be at now; empty: none in particular
    bool armHeld = false;        // by the other hand
    Wire wire = Wire::none;      // where the red lead belongs now
    bool movingLead = false;     // the lead is on its way there; the step proper has not begun
    std::optional<double> aim_V; // adjusting: what the meter should show, and how near is near enough
    double aimWithin_V = 0;
    Question question = Question::none; // worded by the instruction
    std::vector<Choice> choices;        // beyond next, back, skip and stop
    bool stopNow = false;               // over 5.5 V: key off
    bool finished = false;
};

enum class StepOutcome { waiting, current, done, skipped };
struct PathEntry {
    Step step;
    StepOutcome outcome = StepOutcome::waiting;
    bool armHeld = false; // the same pushes, the arm held by the other hand
    bool again = false;   // asked for again
    Sentence because{};   // of one that is
};

struct ProcedureOptions {
    std::uint64_t seed = 1;                              // of the random part of the pace
    std::vector<std::string> sections = usualSections(); // of the harness, as the examination knows them
    bool endStepsByEvidence = true;
};

class Procedure {
public:
    Procedure(const Sheet& sheet, const MeterTraits& meter, ProcedureOptions options);
    Procedure(Procedure&&) noexcept;
    Procedure& operator=(Procedure&&) noexcept;
    ~Procedure();

    // Each returns the marks to record now, in order, stamped `now`. `findings` is what the examination says at
    // `now`.
    std::vector<Mark> start(Time now);
    std::vector<Mark> command(Command command, Time now, const Findings& findings);
    std::vector<Mark> tick(Time now, const Findings& findings); // a few times a second, and after each reading

    [[nodiscard]] const Prompt& prompt() const;
    [[nodiscard]] const std::vector<PathEntry>& path() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace stillwire
