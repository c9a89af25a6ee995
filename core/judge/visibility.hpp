// SPDX-License-Identifier: GPL-3.0-or-later
// What a meter that averages over an aperture, once an interval, can see of a dropout.
#pragma once

#include <optional>

namespace stillwire {

// Seconds and volts. Aperture unknown: the worse of A = 0.1 T and A = T is taken.
struct Sight {
    double interval_s = 0;            // T
    std::optional<double> aperture_s; // A, 0 < A <= T
    double threshold_V = 0;           // h
};

// What a reading in a pose has to show: the threshold, or the sheet's play and a count, for a dropout that two
// readings share is taken for play where neither shows more.
[[nodiscard]] double poseThreshold_V(double threshold_V, double play_V, double resolution_V);

// Chance that one dropout of depth D > 0 and duration t shows, its start uniform over an interval. The signal
// averaged over one aperture falls by D·overlap/A, so an overlap of m = A·h/D passes the threshold: min(1, (A + t -
// 2m)/T) if m <= min(A, t), else 0.
[[nodiscard]] double chanceToShow(const Sight& sight, double depth_V, double duration_s);

// The shortest dropout of depth D that cannot hide: max(m, T - A + 2m) if D >= h, else none.
[[nodiscard]] std::optional<double> shortestVisible_s(const Sight& sight, double depth_V);

} // namespace stillwire
