// SPDX-License-Identifier: GPL-3.0-or-later
// Every word the procedure says, in one table. Cautions come from common practice (no source) and give way to the
// maker's service literature.
#pragma once

#include "core/base/sentence.hpp"
#include "core/domain/mark.hpp"

#include <span>
#include <string_view>

namespace stillwire {

struct StepText {
    Step step;
    const char* title;
    const char* instruction; // one sentence: what the hand does
    const char* why;
    std::span<const char* const> cautions;
};

[[nodiscard]] const StepText& stepText(Step step);

namespace phrases {
constexpr const char* kVerbatim = "%1"; // a sheet's own caution
// What is still wanted, of one and of more.
struct Wanted {
    const char* one;
    const char* more;
    [[nodiscard]] Sentence operator()(int n) const; // empty: none
};
constexpr Wanted kPoses{"one more pose", "%1 more poses"};
constexpr Wanted kSeconds{"one more second", "%1 more seconds"};
constexpr Wanted kMinutes{"one more minute", "%1 more minutes"};
constexpr Wanted kReleases{"one more release", "%1 more releases"};
constexpr Wanted kPlaces{"one more position", "%1 more positions"};
constexpr const char* kMoreReadings = "a few more steady readings";
[[nodiscard]] const char* kPush(Side side); // "hold left"
constexpr const char* kArmHeld = "The arm leaned with the push: hold the arm still with the other hand, and push the "
                                 "shaft again, as the pace says.";
constexpr const char* kSectionLeft = "section %1, hold left";
constexpr const char* kSectionRight = "section %1, hold right";
constexpr const char* kRedLead = "red lead";
constexpr const char* kBlackLead = "black lead";
constexpr const char* kGoTo = "Move to \"%1\" and hold it there.";
constexpr const char* kLetGoTo = "Let it come back to \"%1\" by itself, hands off.";
constexpr const char* kMoveLeadReference =
    "Move the red lead to the reference wire; leave the black lead where it is.";
constexpr const char* kMoveLeadGround =
    "Move the red lead to the sensor's ground wire; leave the black lead where it is.";
constexpr const char* kMoveLeadSignal = "Move the red lead to the signal wire; leave the black lead where it is.";
constexpr const char* kSayWhenThere = "Go on once the red lead sits firmly.";
constexpr const char* kCannotSee = "This meter is too slow to see the fault looked for; the verdict will say so.";
constexpr const char* kSectionsAre = "Section 1 is the sensor's connector, section %1 the controller's; between them "
                                     "lie pieces of the wire.";
constexpr const char* kWarmWait = "Leave the key on; the second look starts %1 minutes after key on.";
constexpr const char* kSweepSlower = "Take about half a minute each way.";
constexpr const char* kTurnTo = "Loosen the sensor a little and turn it until the meter shows %1.";
constexpr const char* kTighten = "Hold it there and tighten evenly; watch that the reading stays.";
constexpr const char* kOffBy = "%1 to go";
constexpr const char* kReachTheWire = "A breakout lead is best; else back-probe where the wire enters the connector, "
                                      "if the maker allows it; piercing a wire comes last.";
constexpr const char* kReadsNothing =
    "It reads %1: the key is off, or the tip does not touch. The lead first: clip it again, in another place.";
constexpr const char* kLeadsSwapped = "It reads %1: red and black are swapped, at the meter or at the wires.";
constexpr const char* kNoReference = "It reads %1, which no reference does: is the tip on the reference wire?";
constexpr const char* kKeyOff = "Turn the key off and wait for the controller to shut down; unplug nothing yet.";
constexpr const char* kAfterKeyOff = "Take the leads off, seal a pierced wire against water, fit everything as the "
                                     "maker says, and run the relearn if the maker asks for one.";
constexpr const char* kReferenceBad =
    "The reference reads %1, outside its limits: find the cause before the sensor is tested or replaced.";
constexpr const char* kGroundBad =
    "The ground wire drops %1, more than the sheet allows: mend it before the sensor is tested or replaced.";
constexpr const char* kNothingLeft = "No step left would change the verdict: finish here?";
constexpr const char* kEndHere = "End here";
constexpr const char* kGoOnAnyway = "Go on anyway";
constexpr const char* kOnStop = "It was on its stop";
constexpr const char* kOffStop = "It was off its stop";
constexpr const char* kOverVoltage = "Stop: over 5.5 V on the signal. Key off now.";
constexpr const char* kOverVoltageWhy =
    "Battery voltage has found its way onto this wire; more testing can harm the controller.";
constexpr const char* kFinished = "The run is over; the verdict stands below.";
} // namespace phrases

} // namespace stillwire
