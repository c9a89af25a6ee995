// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of telling what is set aside: movements of the arm, leans, leads and supply.
#pragma once

#include "core/analyse/aside.hpp"
#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace stillwire {

// Own rules, no source.
inline constexpr double kAsideRail_V = 0.1;
inline constexpr double kSameLevel_V = 0.03; // a position is met again to this, or to the sheet's play
inline constexpr double kSameCounts = 3;
inline constexpr double kBeyond = 1.1; // of the way to another position: a firm push

[[nodiscard]] inline bool atRail(double volts_V, const Sheet& sheet) {
    return volts_V <= kAsideRail_V || volts_V >= sheet.nominal_V - kAsideRail_V;
}
inline void setAside(Excursion& e, Likely likely) {
    e.kind = ExcursionKind::aside;
    e.likely = likely;
}
// A dropout of the signal, over, in a step.
[[nodiscard]] bool ofSignal(const Excursion& e, const AsideEvidence& evidence);

// Where the positions were seen to lie, shown volts; their windows where they were not.
class Travel {
public:
    explicit Travel(const AsideEvidence& evidence) : evidence_(&evidence) {
        const Sheet& sheet = *evidence.sheet;
        std::vector<std::vector<double>> seen(sheet.positions.size());
        for (const Plateau& plateau : *evidence.plateaus) {
            const Context& at = plateau.place;
            if (at.position < 0 || at.poseIndex >= 0 || at.wire != Wire::signal || plateau.readings < 3) continue;
            seen[static_cast<std::size_t>(at.position)].push_back(plateau.level_V);
        }
        for (std::size_t i = 0; i < seen.size(); ++i) {
            if (seen[i].empty())
                levels_.push_back(sheet.positions[i].window.middle_V());
            else
                levels_.push_back(medianOf(seen[i]));
            measured_.push_back(!seen[i].empty());
        }
    }
    [[nodiscard]] double near_V() const {
        return std::max({kSameLevel_V, evidence_->sheet->play_V, kSameCounts * evidence_->resolution_V});
    }
    // The position that these volts are those of.
    [[nodiscard]] std::optional<std::size_t> at(double volts_V) const {
        for (std::size_t i = 0; i < levels_.size(); ++i)
            if (measured_[i] && std::abs(volts_V - levels_[i]) <= near_V()) return i;
        return std::nullopt;
    }
    // From one level towards another position's, and not much beyond the last.
    [[nodiscard]] bool along(double from_V, double to_V) const {
        return std::any_of(levels_.begin(), levels_.end(), [&](double level_V) {
            const double way_V = level_V - from_V;
            return (to_V - from_V) * way_V > 0 && std::abs(to_V - from_V) <= kBeyond * std::abs(way_V) + near_V();
        });
    }
    [[nodiscard]] bool rests(double volts_V) const {
        const auto index = static_cast<std::size_t>(&evidence_->sheet->rest() - evidence_->sheet->positions.data());
        return std::abs(volts_V - levels_[index]) <= 2 * near_V();
    }

private:
    const AsideEvidence* evidence_;
    std::vector<double> levels_;
    std::vector<bool> measured_;
};

// Goes to another position's level, and comes back; not in push after push.
void tellMovements(std::vector<Excursion>& excursions, const Travel& travel, const AsideEvidence& evidence);
// The arm stood where it was before for some time after it was asked to move.
[[nodiscard]] std::vector<Aside> lateStarts(const AsideEvidence& evidence, const Travel& travel);
// A level that settled elsewhere: where the arm goes, or a reference that sinks.
[[nodiscard]] std::optional<Likely> asMovement(const LevelJump& jump, const Travel& travel,
                                               const AsideEvidence& evidence);
[[nodiscard]] std::optional<Likely> asSag(const LevelJump& jump, const AsideEvidence& evidence);

// The same push does the same.
void tellLeans(std::vector<Excursion>& excursions, const AsideEvidence& evidence);

// A lead that left before its step was over; what came once in all, for long.
void tellLeads(std::vector<Excursion>& excursions, const AsideEvidence& evidence);
// When what was set aside was over: a lead that left early stays away until its step is.
[[nodiscard]] Time overAt(const Excursion& e, const AsideEvidence& evidence);

} // namespace stillwire
