// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/path.hpp"

#include <algorithm>
#include <utility>

namespace stillwire {

namespace {

constexpr int kAdjustRounds = 4;

// A sensor that must go, or whose wires must be mended first, is not turned.
bool worthTurning(const Findings& f) {
    const Decision d = f.verdict.decision;
    const bool mends = d == Decision::replace || d == Decision::checkWiring || d == Decision::checkSupply ||
                       d == Decision::checkLinkage;
    return f.adjustment.wanted && f.adjustment.feasible && !mends;
}

} // namespace

Path::Path() {
    for (const StepTraits& t : kStepTable)
        if (t.need != Need::offered) entries_.push_back({t.step});
}

void Path::go(std::size_t index) {
    at_ = index;
    set(StepOutcome::current);
}

void Path::addAfterShaft() {
    entries_.insert(after(at_),
                    {{Step::connectorHeld}, {Step::leadCheck}, {Step::wiggleReference}, {Step::wiggleGround}});
}

void Path::addNext(PathEntry entry) { entries_.insert(after(at_), std::move(entry)); }

int Path::repeats(Step step) const {
    return static_cast<int>(std::count_if(entries_.begin(), entries_.end(),
                                          [&](const PathEntry& e) { return e.step == step && e.again; }));
}

bool Path::allAsked() const {
    if (step() == Step::adjust) return false; // every end is measured next
    return std::all_of(entries_.begin() + static_cast<std::ptrdiff_t>(at_) + 1, entries_.end(),
                       [](const PathEntry& e) {
                           return e.outcome != StepOutcome::waiting || traits(e.step).warmth == Warmth::warm ||
                                  traits(e.step).need == Need::optional;
                       });
}

bool Path::wasDone(Step step) const {
    return std::any_of(entries_.begin(), entries_.end(), [&](const PathEntry& entry) {
        return entry.step == step && entry.outcome == StepOutcome::done;
    });
}

void Path::dropConfirm() { entries_.erase(after(at_)); }

std::size_t Path::next(const Findings& findings) {
    const bool confirmed = step() == Step::confirm && entries_[at_].outcome == StepOutcome::done;
    if (confirmed && worthTurning(findings) && adjustRounds_ < kAdjustRounds)
        entries_.insert(after(at_), {{Step::adjust}, {Step::confirm}});
    std::size_t next = at_ + 1;
    while (next < entries_.size() && entries_[next].outcome != StepOutcome::waiting) ++next;
    // Adjust and its confirmation are no part of a run with nothing to turn.
    while (entries_[next].step == Step::adjust && !worthTurning(findings))
        entries_.erase(after(next) - 1, after(next) + 1);
    if (entries_[next].step == Step::adjust) ++adjustRounds_;
    return next;
}

} // namespace stillwire
