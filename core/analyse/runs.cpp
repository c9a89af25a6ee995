// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/runs.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr std::size_t kKept = 64;
} // namespace

void Runs::begin(Time time, double volts_V) {
    before_.clear();
    newest_ = {time, time, volts_V, 1};
}

bool Runs::push(Time time, double volts_V, double tolerance_V) {
    if (newest_.readings > 0) {
        if (std::abs(volts_V - newest_.level_V()) <= tolerance_V) {
            newest_.sum_V += volts_V;
            ++newest_.readings;
            newest_.to = time;
            return false;
        }
        if (before_.size() == kKept) before_.erase(before_.begin());
        before_.push_back(newest_);
    }
    newest_ = {time, time, volts_V, 1};
    return true;
}

bool Runs::rested(int readings, Time stayed) const {
    const auto rest = [&](const Run& run) { return run.readings >= readings && run.to - run.from >= stayed; };
    return rest(newest_) || std::any_of(before_.begin(), before_.end(), rest);
}

} // namespace stillwire
