// SPDX-License-Identifier: GPL-3.0-or-later
// Counts as they are said, of one and of more; and places of the hand.
#pragma once

#include "core/base/sentence.hpp"
#include "core/domain/pose_place.hpp"
#include "core/findings/findings.hpp"

#include <string>

namespace stillwire {

[[nodiscard]] inline Sentence counted(std::size_t n, const char* one, const char* more) {
    return n == 1 ? Sentence{one, {}} : Sentence{more, {std::to_string(n)}};
}
[[nodiscard]] inline Sentence countedPoses(int n) {
    return counted(static_cast<std::size_t>(n < 0 ? 0 : n), "1 pose", "%1 poses");
}
[[nodiscard]] inline Sentence countedTimes(int n) {
    return n == 1 ? Sentence{"once"} : Sentence{"%1 times", {std::to_string(n)}};
}
[[nodiscard]] inline Sentence countedReleases(int n) {
    return counted(static_cast<std::size_t>(n < 0 ? 0 : n), "1 release", "%1 releases");
}

// "most likely a tap".
[[nodiscard]] Sentence likelySaid(Likely likely);

// "section 2, left".
[[nodiscard]] inline Argument placeAsSaid(const PosePlace& place) {
    const std::string section(place.section());
    if (section.empty()) return byName(place.text());
    if (place.way.empty()) return Sentence{"section %1", {section}};
    return Sentence{"section %1, %2", {section, byName(place.way)}};
}

} // namespace stillwire
