// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/travel.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
// Own rules, no source.
constexpr double kSameLevel_V = 0.03; // a position is met again to this, or to the sheet's play
constexpr double kSameCounts = 3;
constexpr double kBeyond = 1.1; // of the way to another position: a firm push
} // namespace

Travel::Travel(const AsideEvidence& evidence) : evidence_(&evidence) {
    const Sheet& sheet = *evidence.sheet;
    std::vector<std::vector<double>> seen(sheet.positions.size());
    for (const Plateau& plateau : *evidence.plateaus) {
        const Context& at = plateau.place;
        if (at.position < 0 || at.poseIndex >= 0 || at.wire != Wire::signal || plateau.readings < 3) continue;
        seen[static_cast<std::size_t>(at.position)].push_back(plateau.level_V);
    }
    for (std::size_t i = 0; i < seen.size(); ++i) {
        levels_.push_back(seen[i].empty() ? sheet.positions[i].window.middle_V() : medianOf(seen[i]));
        measured_.push_back(!seen[i].empty());
    }
}

double Travel::near_V() const {
    return std::max({kSameLevel_V, evidence_->sheet->play_V, kSameCounts * evidence_->resolution_V});
}

std::optional<std::size_t> Travel::at(double volts_V) const {
    for (std::size_t i = 0; i < levels_.size(); ++i)
        if (measured_[i] && std::abs(volts_V - levels_[i]) <= near_V()) return i;
    return std::nullopt;
}

bool Travel::along(double from_V, double to_V) const {
    return std::any_of(levels_.begin(), levels_.end(), [&](double level_V) {
        const double way_V = level_V - from_V;
        return (to_V - from_V) * way_V > 0 && std::abs(to_V - from_V) <= kBeyond * std::abs(way_V) + near_V();
    });
}

bool Travel::rests(double volts_V) const {
    const auto index = static_cast<std::size_t>(&evidence_->sheet->rest() - evidence_->sheet->positions.data());
    return std::abs(volts_V - levels_[index]) <= 2 * near_V();
}

} // namespace stillwire
