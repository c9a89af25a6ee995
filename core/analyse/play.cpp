// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/play.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
constexpr int kHeldReadings = 3; // as a pose holds
constexpr Time kHeld = 600ms;    // between its first reading and its last
constexpr Time kApart = 6s;      // one pose and the next
constexpr std::size_t kFewest = 3;
constexpr Time kLeftEarly = 700ms;
constexpr double kLeftIntervals = 1.5;
constexpr Time kHandOver = 1500ms;  // after the mark of a pose
constexpr Time kHandLate = 1s;      // after the mark of the next pose
constexpr int kShortPose = 4;       // readings near the level
constexpr int kFewestLeans = 2;     // the edges of a dropout lean, too
constexpr double kLeansShare = 0.4; // of the pose's readings
constexpr int kHeldOfPose = 2;
constexpr double kAlike_V = 0.015; // of one arm held over the same way
constexpr double kAlikeCounts = 2;

bool shiftLikePlay(const Excursion& e) {
    return e.unmarked && e.kind == ExcursionKind::dropout && e.depth_V() <= e.play_V && e.readings >= kHeldReadings &&
           e.to - e.from >= kHeld;
}

bool alike(const std::vector<Excursion>& all, std::size_t from, std::size_t to, double tolerance_V) {
    double least_V[2] = {1e9, 1e9}, most_V[2] = {0, 0};
    for (std::size_t i = from; i < to; ++i) {
        const std::size_t way = all[i].direction == Direction::up ? 1 : 0;
        least_V[way] = std::min(least_V[way], all[i].depth_V());
        most_V[way] = std::max(most_V[way], all[i].depth_V());
    }
    return most_V[0] - least_V[0] <= tolerance_V && most_V[1] - least_V[1] <= tolerance_V;
}
// Nothing marked: a hand that holds it one way and the other leaves shallow shifts of about a second, much alike, one
// after another.
void tellUnmarked(std::vector<Excursion>& excursions, double resolution_V) {
    const double tolerance_V = std::max(kAlike_V, kAlikeCounts * resolution_V);
    std::size_t from = 0;
    while (from < excursions.size()) {
        if (!shiftLikePlay(excursions[from])) {
            ++from;
            continue;
        }
        std::size_t to = from + 1;
        while (to < excursions.size() && shiftLikePlay(excursions[to]) &&
               excursions[to].from - excursions[to - 1].to <= kApart)
            ++to;
        if (to - from >= kFewest && alike(excursions, from, to, tolerance_V))
            for (std::size_t i = from; i < to; ++i) excursions[i].kind = ExcursionKind::play;
        from = to;
    }
}

bool leans(const Excursion& e, const Pose& pose) {
    const int readings = e.direction == Direction::up ? pose.leansUp : pose.leansDown;
    const int enough =
        pose.held <= kShortPose ? 1 : std::max(kFewestLeans, static_cast<int>(kLeansShare * pose.held));
    return readings >= enough;
}

// The next pose, if most of it lies there: the hand was over a moment before the mark. Else its own.
std::size_t laterPose(const Excursion& e, const std::vector<Pose>& poses) {
    const auto index = static_cast<std::size_t>(e.poseIndex);
    if (index + 1 == poses.size() || poses[index + 1].stepVisit != poses[index].stepVisit) return index;
    const Time next = poses[index + 1].from;
    return e.to - next >= next - e.from ? index + 1 : index;
}

// The hand lets go a little before the next mark; after the last pose of a step there is none to wait for.
bool holdsThrough(const Excursion& e, std::size_t index, const std::vector<Pose>& poses, double interval_s) {
    const Pose& pose = poses[index];
    if (!pose.closed) return true;
    // Within the threshold now, perhaps, but the pose leans to that side; or the one before did, and the hand is
    // late.
    if (leans(e, pose)) return true;
    const bool early = e.from - pose.from <= kHandLate + fromSeconds(interval_s);
    if (early && index > 0 && poses[index - 1].stepVisit == pose.stepVisit && leans(e, poses[index - 1])) return true;
    if (e.from - pose.from > kHandOver + fromSeconds(interval_s)) return false; // the hand was over long before
    const bool last = index + 1 == poses.size() || poses[index + 1].stepVisit != pose.stepVisit;
    if (last) return e.readings >= kHeldReadings;
    return e.to >= pose.to - std::max(kLeftEarly, fromSeconds(kLeftIntervals * interval_s));
}

// The pose itself lies to that side, within the threshold; these readings lie no further from it than noise may.
bool ofItsPose(const Excursion& e, const Pose& pose) {
    if (pose.held < kHeldOfPose) return false;
    const double pose_V = pose.heldSum_V / pose.held;
    const bool sameSide = (pose_V - e.held_V) * (e.extreme_V - e.held_V) > 0;
    return sameSide && std::abs(e.extreme_V - pose_V) <= e.threshold_V - std::abs(pose_V - e.held_V) / 2;
}
} // namespace

void tellPlay(std::vector<Excursion>& excursions, const PlayEvidence& evidence) {
    for (Excursion& e : excursions) {
        if (e.poseIndex < 0 || e.depth_V() > e.play_V) continue;
        const std::vector<Pose>& poses = evidence.timeline->poses();
        const auto own = static_cast<std::size_t>(e.poseIndex);
        const std::size_t later = laterPose(e, poses);
        if (ofItsPose(e, poses[own]) || ofItsPose(e, poses[later]))
            e.kind = ExcursionKind::play;
        else if (e.kind == ExcursionKind::play && !holdsThrough(e, own, poses, evidence.interval_s) &&
                 !holdsThrough(e, later, poses, evidence.interval_s))
            e.kind = ExcursionKind::dropout;
    }
    tellUnmarked(excursions, evidence.resolution_V);
}

} // namespace stillwire
