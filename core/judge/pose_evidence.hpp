// SPDX-License-Identifier: GPL-3.0-or-later
// What the tallies and the coverage are taken from, and which of its poses were looked at.
#pragma once

#include "core/analyse/plateau_book.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>
#include <string>
#include <vector>

namespace stillwire {

struct CoverageEvidence {
    const Sheet* sheet = nullptr;
    const Timeline* timeline = nullptr;
    const std::vector<Plateau>* plateaus = nullptr;
    const std::vector<Excursion>* excursions = nullptr;
    const std::vector<LevelJump>* jumps = nullptr;
    const std::vector<BlindSpan>* blind = nullptr;
    const std::vector<Aside>* aside = nullptr;
    double interval_s = 0;
    std::optional<double> aperture_s;
    double threshold_V = 0; // of now, for a step without a plateau
    Time end{0};
    const std::vector<Time>* renewals = nullptr; // of an excursion, perhaps in a later pose
    const MeterTraits* meter = nullptr;
    const std::vector<std::string>* sections = nullptr; // of the harness, from the sensor, as the capture names them
    Time countsFrom{-10000000}; // poses before it do not count: a lead check failed; see tallyLeads()
};

inline constexpr int kReadingsInAPose = 2; // fewer show nothing

[[nodiscard]] const Pose& poseAt(const CoverageEvidence& evidence, int index);

// Enough readings, none of it blind, undone or set aside, and no lead check failed since.
[[nodiscard]] bool lookedAt(const Pose& pose, const CoverageEvidence& evidence);
// It counts, but for something in it that was set aside. A lean is as long as its push, and hides nothing.
[[nodiscard]] bool setAsideIn(const Pose& pose, const CoverageEvidence& evidence);
// Off the scale in a pose where the level should have stood still, and could not have left its range by play.
[[nodiscard]] bool wentOffScale(const Pose& pose, const CoverageEvidence& evidence);
// A lead check that failed speaks for itself; what was pushed before it may have moved the leads.
[[nodiscard]] bool counts(Time at, std::optional<Step> step, const CoverageEvidence& evidence);
// Belongs this pose (or, at -1, this step outside its poses) to what was shaken?
[[nodiscard]] bool belongs(const CoverageEvidence& evidence, Wiggled shaken, std::optional<Step> step, int pose);
// The name of the section, as the capture names it or, where it names none, as the pose does.
[[nodiscard]] std::string sectionOf(const PosePlace& where, const CoverageEvidence& evidence);

// What was held in the poses of a step that were looked at (before there are any: in all of it), for what could be
// seen in it: the middle one of its levels, shown volts.
struct HeldLevel {
    double level_V = 0, threshold_V = 0;
};
[[nodiscard]] HeldLevel heldIn(const CoverageEvidence& evidence, Step step);

} // namespace stillwire
