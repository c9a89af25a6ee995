// SPDX-License-Identifier: GPL-3.0-or-later
// A session told on a terminal, line by line, as it changes.
#pragma once

#include "meters/session/session.hpp"

#include <cstddef>
#include <memory>
#include <string>

namespace stillwire {

class Follower {
public:
    // Prints what is new since the last call: steps, poses, what the wire did, what the link and the recorder say.
    void tell(const SessionSnapshot& now);

private:
    void tellPrompt(const Prompt& prompt, Time now);
    void tellWire(const Findings& findings);

    std::string step_, instruction_, pose_, offer_, link_, recorder_, path_;
    bool toldPath_ = false;
    std::size_t dropouts_ = 0, jumps_ = 0;
};

// "[Enter] go on …": the keys that mean something now.
[[nodiscard]] std::string keysFor(const Prompt& prompt);

// Until the session ends, the time is up (0: never) or `interrupted` says so. Lines typed on stdin are commands;
// "w FILE" saves the capture elsewhere.
void followToTheEnd(Session& session, double duration_s, bool (*interrupted)());

} // namespace stillwire
