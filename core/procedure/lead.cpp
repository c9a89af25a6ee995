// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/lead.hpp"

#include "core/procedure/texts.hpp"

#include <cmath>

namespace stillwire {

namespace {
constexpr double kSteadyFor_s = 1.5;
constexpr double kMoved_V = 0.15;   // less is the same wire still
constexpr double kGroundAt_V = 1.0; // a ground that drops more is for the person to say
} // namespace

void LeadMove::begin(Wire wanted, const Bench& bench) {
    wanted_ = wanted;
    left_V_ = bench.held_V();
    readings_ = bench.findings->readings;
    there_ = {};
}

bool LeadMove::arrived(const Bench& bench) {
    const double v = bench.held_V();
    bool there = false;
    if (wanted_ == Wire::reference) there = v > 0.6 * bench.sheet.nominal_V;
    if (wanted_ == Wire::ground)
        there = std::abs(v) < kGroundAt_V && std::abs(v) > 1.5 * bench.findings->meter.resolution_V;
    if (wanted_ == Wire::signal) there = v > kMoved_V;
    const bool moved = readings_ == 0 || std::abs(v - left_V_) > kMoved_V;
    there_.see(there && moved && bench.steady(), bench.now);
    return there_.for_s(bench.now) >= kSteadyFor_s;
}

void LeadMove::show(Prompt& prompt) const {
    const char* where = phrases::kMoveLeadSignal;
    if (wanted_ == Wire::reference) where = phrases::kMoveLeadReference;
    if (wanted_ == Wire::ground) where = phrases::kMoveLeadGround;
    prompt.instruction = {where, {}};
    prompt.detail = {phrases::kSayWhenThere, {}};
    prompt.movingLead = true;
}

} // namespace stillwire
