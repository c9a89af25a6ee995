// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/aside_parts.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace stillwire {

namespace {
// Own rules, no source.
constexpr double kPushShare = 0.3;  // of its pose's readings
constexpr double kFlatShare = 0.25; // of a lean's depth, from its lowest to its highest reading
constexpr double kAlike_V = 0.02;   // of one arm pushed over the same way
constexpr double kAlikeShare = 0.2; // or of the lean
constexpr double kMostAlike = 0.22; // of the pushes to one side

// Flat and little, and as long as the push, in a pose of the shaft.
bool mayLean(const Excursion& e, const AsideEvidence& evidence) {
    if (!ofSignal(e, evidence) || e.poseIndex < 0) return false;
    const Pose& pose = evidence.timeline->poses()[static_cast<std::size_t>(e.poseIndex)];
    const double depth_V = std::abs(e.far_V - e.held_V);
    return pose.shaken != Wiggled::harness && e.depth_V() <= evidence.sheet->leanMax_V &&
           !atRail(e.extreme_V, *evidence.sheet) && e.readings >= 2 && e.readings >= kPushShare * pose.readings &&
           e.farSpread_V <= std::max(kFlatShare * depth_V, 2 * e.threshold_V / 3);
}

} // namespace

// The same push does the same: shifts to one side, as deep, again and again where a step pushes so. A track fails in
// fewer of them, and seldom as deep again.
void tellLeans(std::vector<Excursion>& excursions, const AsideEvidence& evidence) {
    const std::vector<Pose>& poses = evidence.timeline->poses();
    const auto poseOf = [&](const Excursion& e) -> const Pose& {
        return poses[static_cast<std::size_t>(e.poseIndex)];
    };
    const auto samePush = [](const Pose& a, const Pose& b) {
        return a.stepVisit == b.stepVisit && a.armHeld == b.armHeld && a.where.way == b.where.way &&
               a.shaken != Wiggled::harness && b.shaken != Wiggled::harness;
    };
    std::vector<Excursion*> shifts, leans;
    for (Excursion& e : excursions)
        if (mayLean(e, evidence)) shifts.push_back(&e);
    for (Excursion* e : shifts) {
        const double depth_V = std::abs(e->far_V - e->held_V);
        const double alike_V = std::max({kAlike_V, kAlikeShare * depth_V, 2 * evidence.resolution_V});
        std::set<int> alike;
        for (const Excursion* other : shifts) {
            const bool same = std::abs(std::abs(other->far_V - other->held_V) - depth_V) <= alike_V;
            if (same && other->direction == e->direction && samePush(poseOf(*other), poseOf(*e)))
                alike.insert(other->poseIndex);
        }
        const auto pushes =
            std::count_if(poses.begin(), poses.end(), [&](const Pose& p) { return samePush(p, poseOf(*e)); });
        if (alike.size() >= 2 && static_cast<double>(alike.size()) >= kMostAlike * static_cast<double>(pushes))
            leans.push_back(e);
    }
    for (Excursion* e : leans) setAside(*e, Likely::lean);
}

} // namespace stillwire
