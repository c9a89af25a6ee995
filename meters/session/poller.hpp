// SPDX-License-Identifier: GPL-3.0-or-later
// When to ask a polled meter again: on its interval, but never while it still owes an answer, unless that is overdue.
#pragma once

#include "meters/describe/description.hpp"

#include <algorithm>

namespace stillwire {

class Poller {
public:
    explicit Poller(const LinkSettings& link)
        : active_(!link.pollCommand.empty()), interval_(std::max(link.pollInterval, Time(1000))),
          overdue_(std::max(3 * interval_, Time(2'000'000))) {}

    [[nodiscard]] bool active() const { return active_; }
    // When to look again, not before `now`.
    [[nodiscard]] Time due(Time now) const { return std::max(now, owes_ ? askedAt_ + overdue_ : next_); }
    [[nodiscard]] bool shouldAsk(Time now) const { return active_ && due(now) <= now; }
    void asked(Time now) {
        owes_ = true;
        askedAt_ = now;
        next_ = std::max(next_ + interval_, now); // keeps the pace, without catching up
    }
    void answered() { owes_ = false; }
    [[nodiscard]] bool owes() const { return owes_; } // and when it should be asked again, it is overdue
    void restart(Time now) {
        owes_ = false;
        next_ = now;
    }

private:
    bool active_;
    Time interval_, overdue_;
    Time next_{0}, askedAt_{0};
    bool owes_ = false;
};

} // namespace stillwire
