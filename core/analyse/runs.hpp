// SPDX-License-Identifier: GPL-3.0-or-later
// Runs of readings that lie together, while a wire is away from its level.
#pragma once

#include "core/base/time.hpp"

#include <vector>

namespace stillwire {

struct Run {
    Time from{0}, to{0};
    double sum_V = 0;
    int readings = 0;

    [[nodiscard]] double level_V() const { return sum_V / readings; }
};

class Runs {
public:
    void begin(Time time, double volts_V); // with the first reading off the level
    // True if this reading has begun a new run.
    bool push(Time time, double volts_V, double tolerance_V);
    void blind() { newest_.readings = 0; } // the next reading begins anew

    [[nodiscard]] const Run& newest() const { return newest_; }
    [[nodiscard]] const std::vector<Run>& before() const { return before_; } // the newest, oldest first
    // Whether any run was long enough to have been a rest.
    [[nodiscard]] bool rested(int readings, Time stayed) const;

private:
    std::vector<Run> before_;
    Run newest_;
};

} // namespace stillwire
