// SPDX-License-Identifier: GPL-3.0-or-later
// The pasts of the explanations that are still alive: a tree of segments, told apart only where they differ.
#pragma once

#include "core/explain/hypothesis.hpp"

#include <cstdint>
#include <vector>

namespace stillwire {

// A stretch of readings in which one explanation has the wire doing one thing.
struct Segment {
    Doing doing = Doing::held;
    std::int64_t from = 0;                            // number of its first reading
    std::int64_t level = -1;                          // id of the level held, or left
    double level_V = 0, noise_V = 0, threshold_V = 0; // of the level, now or as it was left
    bool unasked = false;                             // a movement, or a level, that no mark asked for
    int before = -1;                                  // the segment before it
    int users = 0;                                    // explanations and later segments that stand on it
};

class Past {
public:
    int add(const Segment& segment); // stands on segment.before
    void use(int index) {
        if (index >= 0) ++all_[static_cast<std::size_t>(index)].users;
    }
    void drop(int index);
    [[nodiscard]] Segment& at(int index) { return all_[static_cast<std::size_t>(index)]; }
    [[nodiscard]] const Segment& at(int index) const { return all_[static_cast<std::size_t>(index)]; }
    // From the first reading that is not settled to the newest: indices, oldest first.
    void chain(int newest, std::vector<int>& out) const;
    void cut(int index); // what lies before it is settled

private:
    std::vector<Segment> all_;
    std::vector<int> free_;
};

} // namespace stillwire
