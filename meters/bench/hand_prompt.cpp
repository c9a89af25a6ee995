// SPDX-License-Identifier: GPL-3.0-or-later
// The hand under a live procedure: it does what the prompt asks for, and answers. It looks at no sentence.
#include "meters/bench/faults.hpp"
#include "meters/bench/hand.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::bench {
namespace {

constexpr double kSure_s = 1.2;  // to see that the lead sits
constexpr double kStuck_s = 180; // in one step without an end: say next, then leave it out
constexpr double kBetweenTurns_s = 4;

} // namespace

void Hand::say(double in_s, Command command) {
    plan(in_s, [this, command] { words_.push_back(command); });
}

std::vector<Command> Hand::obey(const Prompt& prompt, Time now) {
    (void)now; // the rig's time is the prompt's
    if (prompt.stopNow || prompt.finished) {
        if (prompt.stopNow && !off_) {
            off_ = true;
            plan(reaction_s() + 1, [this] { rig_.key(false); });
            say(reaction_s() + 1.2, Command::next);
        }
    } else {
        if (prompt.step != promptStep_ || prompt.number != promptNumber_ || prompt.movingLead != leading_)
            enter(prompt);
        follow(prompt);
    }
    std::vector<Command> words;
    words.swap(words_);
    return words;
}

void Hand::enter(const Prompt& prompt) {
    promptStep_ = prompt.step;
    promptNumber_ = prompt.number;
    leading_ = prompt.movingLead;
    offering_ = sweeping_ = false;
    nudges_ = 0;
    entered_s_ = rig_.now_s();
    if (!prompt.movingLead) at_.clear();
    step_ = prompt.movingLead ? std::nullopt : prompt.step;
    handsOff();
    rig_.holdConnector(step_ == Step::connectorHeld);
    rig_.holdArm(prompt.armHeld);
    const bool moves = prompt.movingLead || prompt.step == Step::hookUp;
    if (moves && prompt.wire != Wire::none && rig_.probed() != prompt.wire) {
        plan(reaction_s(), [this, wire = prompt.wire] {
            const double there_s = reach(wire) - rig_.now_s();
            plan(there_s + kSure_s, [this] {
                if (leading_) words_.push_back(Command::next); // unless the reading told by itself
            });
        });
    }
    if (prompt.movingLead || !prompt.step) return;
    switch (*prompt.step) {
    case Step::hookUp: plan(habits_.leadMove_s * 2, [this] { rig_.key(true); }); break;
    case Step::sweep: plan(reaction_s() + 1, [this] { sweep(); }); break;
    case Step::lift: {
        const bool off = hangs_ > 0 && !rig_.hangsInSensor();
        plan(reaction_s() + 2, [this] { rig_.settleArm(); });
        say(reaction_s() + 3, off ? Command::liftOffStop : Command::liftOnStop);
        break;
    }
    case Step::putBack:
        plan(reaction_s() + 2, [this] { rig_.key(false); });
        say(reaction_s() + 2.5, Command::next);
        say(reaction_s() + 6, Command::next);
        break;
    case Step::reference:
    case Step::ground:
    case Step::coldStart:
    case Step::leadCheck:
    case Step::wiggleShaft:
    case Step::wiggleHarness:
    case Step::fullPress:
    case Step::release:
    case Step::warmRepeat:
    case Step::adjust:
    case Step::confirm:
    case Step::connectorHeld:
    case Step::wiggleReference:
    case Step::wiggleGround: break; // follow() does it
    }
}

void Hand::follow(const Prompt& prompt) {
    if (prompt.question != Question::none) {
        if (!offering_) say(reaction_s() + 2, Command::offerYes);
        offering_ = true;
        return;
    }
    if (offering_) { // answered, and the step is another one or the same again
        offering_ = false;
        enter(prompt);
    }
    if (prompt.asked && prompt.asked->since != poseSince_) {
        poseSince_ = prompt.asked->since;
        entered_s_ = rig_.now_s(); // a step that asks for another pose is not stuck
        onPose(prompt.asked->place);
    }
    if (!prompt.movingLead && !prompt.position.empty() && prompt.position != at_) {
        at_ = prompt.position;
        onPosition(at_);
    }
    if (prompt.aim_V) turnTowards(prompt);
    const double here_s = rig_.now_s() - entered_s_;
    const bool warming = prompt.step == Step::warmRepeat && !prompt.asked;
    const double patience_s = warming ? habits_.warmPatience_s : kStuck_s;
    if (here_s > patience_s * (1 + nudges_)) say(0.1, nudges_++ % 2 == 0 || warming ? Command::next : Command::skip);
}

// Turns by eye: a whole part-turn while far off, less when near, and looks before the next.
void Hand::turnTowards(const Prompt& prompt) {
    if (rig_.now_s() - std::max(turned_s_, entered_s_) < kBetweenTurns_s) return;
    const double off_V = *prompt.aim_V - rig_.settled_V(Wire::signal);
    if (std::abs(off_V) < 0.7 * prompt.aimWithin_V) return;
    turned_s_ = rig_.now_s();
    const double turns = std::clamp(off_V / rig_.perTurn_V(), -1.0, 1.0) * random_.uniform(0.93, 1.07);
    span("travel");
    plan(reaction_s(), [this, turns] { rig_.turn(turns); });
    plan(reaction_s() + 0.8, [this] { span("still"); });
    say(0.1, turns > 0 ? Command::turnIn : Command::turnOut);
}

} // namespace stillwire::bench
