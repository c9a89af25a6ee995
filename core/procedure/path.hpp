// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of one run in their order, and where it is. The order adapts to what the steps find.
#pragma once

#include "core/procedure/procedure.hpp"

namespace stillwire {

class Path {
public:
    Path();

    [[nodiscard]] const std::vector<PathEntry>& entries() const { return entries_; }
    [[nodiscard]] std::size_t at() const { return at_; }
    [[nodiscard]] std::size_t last() const { return entries_.size() - 1; } // put-back
    [[nodiscard]] Step step() const { return entries_[at_].step; }

    void go(std::size_t index); // the step there is the current one
    void set(StepOutcome outcome) { entries_[at_].outcome = outcome; }

    void addAfterShaft();          // after this step: what tells the shaft from connector, leads and supply
    void addNext(PathEntry entry); // after this step
    [[nodiscard]] bool wasDone(Step step) const;
    [[nodiscard]] int repeats(Step step) const; // asked for again
    // Nothing but turning, looking again later and putting back is left: what is missing is asked for now.
    [[nodiscard]] bool allAsked() const;
    void dropConfirm(); // after this step, an adjustment that was skipped: nothing to confirm
    // Where to go on: without turning where nothing is to be turned, with another round where the ends confirmed are
    // not yet right.
    [[nodiscard]] std::size_t next(const Findings& findings);

private:
    [[nodiscard]] std::vector<PathEntry>::iterator after(std::size_t index) {
        return entries_.begin() + static_cast<std::ptrdiff_t>(index) + 1;
    }

    std::vector<PathEntry> entries_;
    std::size_t at_ = 0;
    int adjustRounds_ = 0;
};

} // namespace stillwire
