// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/texts.hpp"

#include <array>

namespace stillwire {

namespace {

constexpr const char* kKeyOnEngineOff = "Key on, engine off: nobody starts the engine, and one person keeps the key.";
constexpr const char* kChocks = "Level ground, brake on, wheels chocked, implement down, bystanders clear.";
constexpr const char* kPressure = "Release hydraulic and air pressure; blocks hold a load, hydraulics do not.";
constexpr const char* kEyes = "Wear eye protection near the battery, and make no sparks.";
constexpr const char* kUnplug = "Never unplug a connector while the key is on.";
constexpr const char* kOtherWires = "Keep off restraint and high-voltage wiring, often yellow or orange.";
constexpr const char* kMaker = "The maker's service literature and local rules come before anything said here.";
// Beside the drawing they are short: each is a line or two, read at arm's length before the hand moves.
constexpr const char* kNobodyStarts = "Nobody starts the engine; one person keeps the key.";
constexpr const char* kMayMove = "Electric, hybrid or pressurised, it can move, engine off: stay clear.";
constexpr const char* kFingers = "Fingers off the tip, leads off the arm.";
constexpr const char* kKeyOnUnplug = "While the key is on, unplug nothing.";
constexpr const char* kTools = "Keep the tool off live terminals.";
constexpr const char* kMakerFirst = "The maker's literature and local rules come first.";
constexpr const char* kKeyOffFirst = "Key off first; then, and not before, unplug.";

constexpr std::array kHookUp{kKeyOnEngineOff, kChocks, kPressure, kEyes, kOtherWires, kUnplug, kMaker};
constexpr std::array kMoveLead{kNobodyStarts, kFingers, kKeyOnUnplug};
constexpr std::array kStill{kNobodyStarts, kKeyOnUnplug};
constexpr std::array kPush{kNobodyStarts, kFingers, kKeyOnUnplug};
constexpr std::array kMove{kNobodyStarts, kMayMove, kFingers};
constexpr std::array kTurn{kNobodyStarts, kMayMove, kTools, kMakerFirst};
constexpr std::array kPutBack{kKeyOffFirst, kMakerFirst};

constexpr std::array<StepText, kStepCount> kTable{{
    {Step::hookUp, "Hook up the meter",
     "Read and note the codes before touching a connector; lock the meter's range on DC volts; clip the black lead "
     "to battery negative; put the red lead on the reference wire, on the harness side of the connector, which stays "
     "plugged in; turn the key on.",
     "A connector that is touched can hide its fault, and a sensor that is unplugged is neither fed nor loaded.",
     kHookUp},
    {Step::reference, "Measure the reference", "Leave the red lead on the reference wire and touch nothing.",
     "Every level is a share of this voltage; if it is wrong, the sensor looks wrong.", kMoveLead},
    {Step::ground, "Measure the ground", "Leave the red lead on the sensor's ground wire and touch nothing.",
     "A bad ground lifts the low end and looks like a bad sensor.", kMoveLead},
    {Step::coldStart, "Watch it cold", "Take hands and feet off and let it rest.",
     "The first cold minutes are the evidence: warmth and movement can hide the fault.", kStill},
    {Step::leadCheck, "Check the leads",
     "Push nothing but the leads at clip and tip, as the pace says: first the red one, then the black one.",
     "A lead that loses contact looks like a bad sensor, and is clipped again in a minute.", kPush},
    {Step::wiggleShaft, "Wiggle the shaft",
     "Push the sensor's shaft and hold, each way as the pace says; touch no wire.",
     "A worn track lets go of its slider under side load; the holds give a slow meter time to see it.", kPush},
    {Step::wiggleHarness, "Wiggle the harness",
     "Bend one section of the harness and hold, as the pace says; touch neither sensor nor arm.",
     "A broken strand or a chafed wire follows the harness, not the shaft.", kPush},
    {Step::fullPress, "Visit every position", "Move to each position in turn and hold it until it is read.",
     "Each end must sit well inside its own window.", kMove},
    {Step::sweep, "Sweep slowly", "Move slowly from end to end and back, without stopping.",
     "A worn spot shows at one place of the travel.", kMove},
    {Step::release, "Press and release", "Press, hold, and let it come back by itself, again and again.",
     "A good sensor and a good spring come back to the same level each time.", kMove},
    {Step::lift, "Look at the stop",
     "Without moving the arm, look whether it rests against its stop, then lift it a little by hand.",
     "On its stop with a wrong level, it is the sensor; off its stop, the spring or the linkage comes first.", kMove},
    {Step::warmRepeat, "Look again when warm", "Repeat the shaft wiggle, as the pace says.",
     "A fault that goes away when warm is still a fault; one that comes when warm is news.", kPush},
    {Step::adjust, "Turn the sensor", "Loosen the sensor a little and turn it to the aim.",
     "The middle of the window leaves room for heat and wear at both ends.", kTurn},
    {Step::confirm, "Confirm the ends", "Move to each position again, now that the screws are tight.",
     "Tightening moves the reading.", kMove},
    {Step::putBack, "Put it back", "Turn the key off and wait for the controller to shut down; unplug nothing yet.",
     "An unsealed puncture lets water in, and a live connector can arc.", kPutBack},
    {Step::connectorHeld, "Hold the connector",
     "With one hand hold the sensor's connector still; with the other push the shaft sideways and hold, as the pace "
     "says.",
     "If it no longer drops out, it is the connector and not the sensor.", kPush},
    {Step::wiggleReference, "Watch the reference",
     "Push the shaft sideways and hold, as the pace says, with the red lead on the reference wire.",
     "If the reference drops under the same push, it is the wire and not the sensor.", kMoveLead},
    {Step::wiggleGround, "Watch the ground",
     "Push the shaft sideways and hold, as the pace says, with the red lead on the ground wire.",
     "If the ground jumps under the same push, it is the wire and not the sensor.", kMoveLead},
}};
static_assert(isTableOfSteps(kTable));

} // namespace

const StepText& stepText(Step step) { return kTable[static_cast<std::size_t>(step)]; }

const char* phrases::kPush(Side side) {
    switch (side) {
    case Side::left: return "hold left";
    case Side::right: return "hold right";
    case Side::in: return "push it in";
    case Side::out: return "pull it out";
    case Side::tap: return "tap the body";
    }
    return "";
}

Sentence phrases::Wanted::operator()(int n) const {
    if (n <= 0) return {};
    return n == 1 ? Sentence{one, {}} : Sentence{more, {std::to_string(n)}};
}

} // namespace stillwire
