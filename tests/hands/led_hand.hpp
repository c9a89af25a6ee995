// SPDX-License-Identifier: GPL-3.0-or-later
// One run in the making: the hand that is led, its marks, and the occasions at which something else happens.
#pragma once

#include "core/domain/step.hpp"
#include "tests/hands/faults.hpp"
#include "tests/hands/machine.hpp"
#include "tests/hands/meter.hpp"
#include "tests/hands/orders.hpp"
#include "tests/hands/scene.hpp"

namespace stillwire::hands {

struct Subject { // what is looked at, and with what
    Machine machine;
    Meter meter;
    std::vector<double> levels_V;
    Fault fault = Fault::none;
    bool oldSteps = false; // without lead-check and connector-held
    bool spare = true;     // a few poses and visits beyond what is asked for, as repeats
    bool quickLead = false;
    bool extraSteps = false; // the steps that follow a first shaft dropout, in a run without one
    std::vector<Step> again; // done once more at the end: what the analyser asked for
};

class LedHand {
public:
    // `hand` decides all that happens without the acts, `chance` what the acts are like.
    LedHand(const Subject& subject, Orders& orders, Dice hand, Dice chance);

    // The led run, in the order of the procedure.
    void run();

    Scene scene;
    std::vector<Act> acts;
    std::vector<Span> faultTimes; // when the fault showed, of those that come and go

private:
    // Steps (steps.cpp, steps_of_wiggles.cpp).
    void otherWires();
    void wire(const char* step, Wire wire, double atLeast_s, double atMost_s);
    void coldStart();
    void shaft();
    void afterFirstDropout();
    void connectorHeld();
    void leadCheck();
    void harness();
    void fullPress();
    void sweep();
    void release();
    void lift();
    void warmRepeat();
    void wirePoses(const char* step, Wire wire);
    void repeat(Step step);

    // What a hand does (led_hand.cpp).
    void open(const std::string& step, Wire wire);
    void close();
    void mark(const std::string& text) { scene.marks.push_back({now_s_, text}); }
    void wait(double for_s); // at rest
    void visit(std::size_t place, double hold_s);
    void move(double level_V, double over_s);
    void pose(const std::string& where, bool dropsOut = false);
    void clip(Wire wire, double before_s);
    [[nodiscard]] double home_V() const { return subject_.levels_V[subject_.machine.rest()]; }
    [[nodiscard]] std::size_t awayFrom(std::size_t place); // a working position beside it

    // Acts (acts_of_*.cpp). Each takes time of its own where a hold is too short for it.
    [[nodiscard]] bool comes(Kind kind) { return orders_.comes(kind, step_); }
    void did(Kind kind, double from_s, double to_s, double depth_V = 0);
    [[nodiscard]] double within(double from_s, double lasts_s, double after_s = 1);
    void whileHolding(double from_s);
    void whileResting(double from_s);
    void onThePhone(double way_V);
    void anyTime(double from_s);
    void timeOut(double from_s);
    void beginStepActs();
    void endStepActs();
    void loose(Kind kind, double from_s);

    // Faults (fault_acts.cpp).
    void beginFault();
    void dropOut(double from_s, double until_s);
    void dropReference(double from_s);
    [[nodiscard]] bool hangs();
    [[nodiscard]] double dropoutLasts_s();
    [[nodiscard]] std::vector<bool> whichPoses(std::size_t poses, double share, bool here);
    [[nodiscard]] bool showsUnderPushes() const {
        return subject_.fault == Fault::shaft || subject_.fault == Fault::connector;
    }

    const Subject& subject_;
    Orders& orders_;
    Dice hand_, chance_;
    double now_s_ = 0;
    std::string step_ = "run";
    std::size_t place_ = 0;
    bool repeating_ = false;
    double hand_V_ = 0; // where the way is now
    Wire wire_ = Wire::none;
    double leanTo_V_ = 0; // of the step in hand; 0: none
    std::string leanSide_;
    int leanAct_ = -1, creepAct_ = -1;    // into acts
    double fallTo_V_ = 0, fallShare_ = 1; // of the fault that comes and goes
    int releases_ = 0, hangFirst_ = 0, hangSecond_ = 0;
};

} // namespace stillwire::hands
