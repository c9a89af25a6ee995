// SPDX-License-Identifier: GPL-3.0-or-later
// Moments of a session: snapshots to look at.
#pragma once

#include "core/procedure/texts.hpp"
#include "core/trace/trace.hpp"
#include "meters/session/session.hpp"

#include <memory>
#include <utility>
#include <vector>

namespace stillwire::test {

// Invented figures, for the look of a moment; no statement about a sensor.
std::shared_ptr<const Sheet> leverSheet();
std::shared_ptr<SessionSnapshot> wiggleMoment();          // the guided run, in the shaft wiggle, seven dropouts
std::shared_ptr<SessionSnapshot> moment(WireState state); // the same with another state of the wire
std::shared_ptr<SessionSnapshot> hookUpMoment();          // the first step, before any reading
std::shared_ptr<SessionSnapshot> adjustMoment();          // turning; 0.12 V above the aim, two turns made
std::shared_ptr<SessionSnapshot> stepMoment(Step step, bool movingLead = false); // any step, with its own words
std::shared_ptr<SessionSnapshot> questionMoment(Question question);
std::shared_ptr<SessionSnapshot> finishedMoment(); // the led run is over
std::shared_ptr<SessionSnapshot> replayMoment();   // a capture replayed to its end

inline Sentence sentence(const char* pattern, std::vector<Argument> arguments = {}) {
    return {pattern, std::move(arguments)};
}
// The path as it stands in this step; an offered step stands behind the wiggle that called for it.
void walkTo(SessionSnapshot& snapshot, Step step);
void sayStep(Prompt& prompt, Step step); // as the procedure does, without what a run adds

} // namespace stillwire::test
