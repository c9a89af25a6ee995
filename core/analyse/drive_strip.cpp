// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/drive_strip.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kCommanded = 0.02;        // less than this is no drive a person would miss
constexpr double kPointStep = 0.04;        // finer changes cannot be seen in the strip
constexpr std::size_t kMostPoints = 20000; // a picture needs no more
constexpr double kLeastApertureShare = 0.1;
} // namespace

double driveAt(const Drive& drive, double level_V) {
    return std::clamp((level_V - drive.noneAt_V) / (drive.fullAt_V - drive.noneAt_V), 0.0, 1.0);
}

DriveStrip::DriveStrip(const Drive& drive, double nominal_V, double interval_s, std::optional<double> aperture_s)
    : drive_(drive), rail_V_(drive.fullAt_V > drive.noneAt_V ? 0.0 : nominal_V), interval_s_(interval_s),
      surely_s_(aperture_s.value_or(kLeastApertureShare * interval_s)), possibly_s_(aperture_s.value_or(interval_s)) {
}

void DriveStrip::point(Time time, double volts_V) {
    const double now = driveAt(drive_, volts_V);
    if (!strip_.points.empty()) {
        const double before = strip_.points.back().drive;
        const bool edge = (now == 0) != (before == 0) || (now == 1) != (before == 1);
        if (std::abs(now - before) < kPointStep && !edge) return;
    }
    if (strip_.points.size() < kMostPoints) strip_.points.push_back({time, now});
    const bool rising = drive_.fullAt_V > drive_.noneAt_V;
    const double reach_V = kPointStep / 2 * std::abs(drive_.fullAt_V - drive_.noneAt_V);
    unchangedFrom_V_ = volts_V - reach_V;
    unchangedTo_V_ = volts_V + reach_V;
    // Beyond either end of the curve the level may go as far as it likes.
    if (now == 0 || now == 1) {
        const double edge_V = now == 1 ? drive_.fullAt_V : drive_.noneAt_V;
        const bool above = (now == 1) == rising;
        unchangedFrom_V_ = above ? edge_V : -1e9;
        unchangedTo_V_ = above ? 1e9 : edge_V;
    }
}

void DriveStrip::moving(Time time, double volts_V) { point(time, volts_V); }

void DriveStrip::away(Time time, double volts_V, double held_V) {
    point(time, volts_V);
    if (driveAt(drive_, held_V) <= kCommanded) return;
    const double toNone = held_V - drive_.noneAt_V; // both signed towards drive
    const double fallen = (held_V - volts_V) / toNone;
    if (fallen <= 0) return;
    if (!commanded_) possible_s_ = interval_s_ - possibly_s_; // unseen before the first aperture
    commanded_ = true;
    const double below = (drive_.noneAt_V - volts_V) / (drive_.noneAt_V - rail_V_);
    sure_s_ += surely_s_ * std::clamp(below, 0.0, 1.0);
    possible_s_ += possibly_s_ * std::min(1.0, fallen) + (interval_s_ - possibly_s_);
}

void DriveStrip::excursionEnded() {
    if (commanded_) {
        const bool sure = sure_s_ > 0 && sure_s_ >= drive_.debounce_s;
        if (sure) ++strip_.stops;
        if (sure || possible_s_ >= drive_.debounce_s) ++strip_.stopsPossible;
    }
    excursionWithdrawn();
}

void DriveStrip::excursionWithdrawn() {
    commanded_ = false;
    sure_s_ = possible_s_ = 0;
}

void DriveStrip::levelChanged(double from_V, double to_V) {
    if (driveAt(drive_, from_V) > kCommanded && driveAt(drive_, to_V) == 0) {
        ++strip_.stops;
        ++strip_.stopsPossible;
    }
}

MachineStrip DriveStrip::strip() const { return strip_; }

} // namespace stillwire
