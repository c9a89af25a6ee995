// SPDX-License-Identifier: GPL-3.0-or-later
// Dropouts while the pedal is moved or held: a foot is on it, and feet move.
#include "core/judge/tally.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kReadingsOfASpike = 2;             // of a sweep
constexpr int kReadingsOfAStay = 3;              // of a foot that holds
constexpr Time kApart = std::chrono::seconds(2); // what bounces is one
constexpr double kSamePlaceShare = 0.1;          // of the sheet's span

// The pedal is moved to a place, and held or let go there.
bool movesIn(Step step) {
    return traits(step).visits() || traits(step).motion == ExpectedMotion::sweep || step == Step::warmRepeat;
}

// Of the dropouts under a moved or held pedal, those that no foot makes: off the travel, and spikes of a sweep at one
// place, again and again. A foot that goes back for a moment, or gives way, stays on the travel.
int tellingMoves(const CoverageEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const auto byLow = [](const Position& a, const Position& b) { return a.window.min_V < b.window.min_V; };
    const auto byHigh = [](const Position& a, const Position& b) { return a.window.max_V < b.window.max_V; };
    const double low_V = std::min_element(sheet.positions.begin(), sheet.positions.end(), byLow)->window.min_V;
    const double high_V = std::max_element(sheet.positions.begin(), sheet.positions.end(), byHigh)->window.max_V;
    const auto offTravel = [&](double volts_V) {
        return volts_V < low_V - sheet.play_V || volts_V > high_V + sheet.play_V;
    };
    const auto heldAt = [&](Time at) {
        return std::any_of(evidence.plateaus->begin(), evidence.plateaus->end(), [&](const Plateau& stay) {
            return stay.readings >= kReadingsOfAStay && stay.from <= at && at <= stay.to;
        });
    };
    int off = 0;
    Time newest{-10000000};
    std::vector<double> spikes; // where they left the line
    for (const LevelJump& jump : *evidence.jumps)
        if (jump.poseIndex < 0 && jump.step && movesIn(*jump.step) && !jump.withReference && offTravel(jump.to_V))
            ++off;
    for (const Excursion& e : *evidence.excursions) {
        if (e.poseIndex >= 0 || !e.step || !movesIn(*e.step) || !votes(e, *evidence.timeline)) continue;
        if (offTravel(e.extreme_V)) {
            if (e.from - newest > kApart) ++off;
            newest = std::max(newest, e.to);
        } else if (*e.step == Step::sweep && e.readings <= kReadingsOfASpike && !heldAt(e.from))
            spikes.push_back(e.held_V);
    }
    int most = 0;
    for (const double at_V : spikes)
        most = std::max(most, static_cast<int>(std::count_if(spikes.begin(), spikes.end(), [&](double other_V) {
                            return std::abs(other_V - at_V) <= kSamePlaceShare * sheet.span_V() / 2;
                        })));
    return off + (most >= 2 ? most : 0);
}

} // namespace

ShakenTally tallyMoving(const CoverageEvidence& evidence) {
    ShakenTally tally =
        tallyWhere(evidence, [](std::optional<Step> step, int pose) { return pose < 0 && step && movesIn(*step); });
    tally.decides = tellingMoves(evidence) >= 2;
    tally.cleanAfter = 0;
    Time counted{-1};
    for (const Plateau& stay : *evidence.plateaus) {
        const Context& at = stay.place;
        if (at.position < 0 || at.poseIndex >= 0 || at.wire != Wire::signal || stay.readings < kReadingsInAPose)
            continue;
        if (at.from <= tally.newest || at.from == counted) continue;
        counted = at.from;
        ++tally.cleanAfter;
    }
    return tally;
}

} // namespace stillwire
