// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/trails.hpp"

#include <algorithm>

namespace stillwire {

std::set<int> renewedIn(const CoverageEvidence& evidence, const Counts& counts) {
    std::set<int> poses;
    for (const Excursion& e : *evidence.excursions) {
        if (e.poseIndex < 0 || !counts(e)) continue;
        const std::vector<Time>& all = *evidence.renewals;
        for (auto at = std::upper_bound(all.begin(), all.end(), e.from); at != all.end() && *at <= e.to; ++at)
            poses.insert(evidence.timeline->at(*at).poseIndex);
    }
    poses.erase(-1);
    return poses;
}

std::set<int> hiddenBehind(const CoverageEvidence& evidence, const Counts& counts, int fewest) {
    std::set<int> hidden;
    const std::vector<Pose>& poses = evidence.timeline->poses();
    for (const Excursion& e : *evidence.excursions) {
        if (e.poseIndex < 0 || !counts(e)) continue;
        for (auto i = static_cast<std::size_t>(e.poseIndex) + 1; i < poses.size() && poses[i].from < e.to; ++i) {
            const Time to = poses[i].closed ? poses[i].to : evidence.end;
            const double free = to > e.to ? toSeconds(to - e.to) / toSeconds(to - poses[i].from) : 0;
            if (free * poses[i].readings < fewest) hidden.insert(static_cast<int>(i));
        }
    }
    return hidden;
}

} // namespace stillwire
