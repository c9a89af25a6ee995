// SPDX-License-Identifier: GPL-3.0-or-later
// What the search hands on: the past that all explanations share, and the one the cheapest has.
#include "core/explain/search.hpp"

#include <algorithm>

namespace stillwire {

void Search::emit(int index, std::int64_t from, std::int64_t to, SettledReadings& settled) const {
    const Segment& segment = past_.at(index);
    while (from < to) {
        const auto at = static_cast<std::size_t>(from - first_);
        std::size_t count = 1;
        while (from + static_cast<std::int64_t>(count) < to && contexts_[at + count] == contexts_[at]) ++count;
        settled.readings(readings_.data() + at, count, contexts_[at], segment, from == segment.from);
        from += static_cast<std::int64_t>(count);
    }
}

void Search::settleAll(SettledReadings& settled) {
    tellRest(settled);
    settled_ = first_ + static_cast<std::int64_t>(readings_.size());
    if (any()) past_.cut(now().past);
    forget();
}

void Search::tellRest(SettledReadings& settled) const {
    if (!any()) return;
    const std::int64_t end = first_ + static_cast<std::int64_t>(readings_.size());
    std::vector<int> chain;
    past_.chain(now().past, chain);
    for (std::size_t i = 0; i < chain.size(); ++i) {
        const std::int64_t to = i + 1 < chain.size() ? past_.at(chain[i + 1]).from : end;
        emit(chain[i], std::max(settled_, past_.at(chain[i]).from), to, settled);
    }
}

// The past that every explanation has in common; false if there is none beyond what is settled.
bool Search::settleCommon(SettledReadings& settled) {
    const std::int64_t end = first_ + static_cast<std::int64_t>(readings_.size());
    std::vector<int> chain, other;
    past_.chain(now().past, chain);
    std::size_t common = chain.size(); // segments of the cheapest that all of them have
    std::int64_t to = end;
    for (std::size_t k = 1; k < alive_.size(); ++k) {
        past_.chain(alive_[k].hypothesis.past, other);
        std::size_t n = 0;
        while (n < std::min(common, other.size()) && chain[n] == other[n]) ++n;
        // They part where either goes on to something else.
        std::int64_t parted = end;
        if (n < chain.size()) parted = std::min(parted, past_.at(chain[n]).from);
        if (n < other.size()) parted = std::min(parted, past_.at(other[n]).from);
        common = std::min(common, n);
        to = std::min(to, parted);
    }
    if (common == 0) return false;
    const std::int64_t before = settled_;
    for (std::size_t i = 0; i < common; ++i) {
        const std::int64_t until = i + 1 < chain.size() ? std::min(to, past_.at(chain[i + 1]).from) : to;
        const std::int64_t from = std::max(settled_, past_.at(chain[i]).from);
        if (from >= until) continue;
        emit(chain[i], from, until, settled);
        settled_ = until;
    }
    past_.cut(chain[common - 1]);
    return settled_ > before;
}

// Those that see the oldest unsettled reading otherwise than the cheapest does.
void Search::giveUpOthers() {
    std::vector<int> chain, other;
    past_.chain(now().past, chain);
    const auto at = [&](const std::vector<int>& of) {
        int found = of.front();
        for (const int i : of)
            if (past_.at(i).from <= settled_) found = i;
        return found;
    };
    const int mine = at(chain);
    std::vector<Candidate> left;
    for (const Candidate& c : alive_) {
        past_.chain(c.hypothesis.past, other);
        if (at(other) == mine)
            left.push_back(c);
        else
            past_.drop(c.hypothesis.past);
    }
    alive_.swap(left);
}

void Search::settle(SettledReadings& settled) {
    settleCommon(settled);
    const auto late = [&] {
        const auto unsettled = static_cast<std::size_t>(settled_ - first_);
        if (unsettled >= readings_.size()) return false;
        return readings_.size() - unsettled > static_cast<std::size_t>(tuning_.search.lagReadings) ||
               last_ - readings_[unsettled].time > fromSeconds(tuning_.search.lag_s);
    };
    while (late() && alive_.size() > 1) {
        const std::size_t before = alive_.size();
        giveUpOthers();
        if (!settleCommon(settled) && alive_.size() == before) break;
    }
    forget();
}

void Search::forget() {
    const auto done = static_cast<std::size_t>(settled_ - first_);
    if (done == 0 || (done < readings_.size() && done < 64)) return;
    readings_.erase(readings_.begin(), readings_.begin() + static_cast<std::ptrdiff_t>(done));
    contexts_.erase(contexts_.begin(), contexts_.begin() + static_cast<std::ptrdiff_t>(done));
    first_ = settled_;
}

} // namespace stillwire
