// SPDX-License-Identifier: GPL-3.0-or-later
// The rig with a hand on it, moved along together.
#pragma once

#include "meters/bench/hand.hpp"
#include "meters/bench/rig.hpp"
#include "meters/bench/script.hpp"
#include "meters/bench/truth.hpp"

#include <cstdint>
#include <vector>

namespace stillwire::bench {

// `setup` is prepared: its levels fit the sheet. Not movable: the hand holds the rig.
class Stage {
public:
    Stage(const BenchSetup& setup, const HandHabits& habits, const Sheet& sheet, const MeterTraits& meter,
          std::uint64_t seed);
    Stage(const Stage&) = delete;
    Stage& operator=(const Stage&) = delete;

    Rig& rig() { return rig_; }
    Hand& hand() { return hand_; }
    [[nodiscard]] double now_s() const { return rig_.now_s(); }
    // Appends what the meter sent; the hand does what it planned on the way.
    void advanceTo(double t_s, std::vector<Reading>& out);
    // Up to the next reading (true: it is appended), or to t_s.
    bool advanceToReading(double t_s, std::vector<Reading>& out);
    // All that happened so far; the verdict is right for `plan`.
    [[nodiscard]] Truth truth(const BenchPlan& plan) const;

private:
    BenchSetup setup_;
    Sheet sheet_;
    Rig rig_;
    Hand hand_;
};

} // namespace stillwire::bench
