// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/trace_maker.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillwire::test {

double Dice::normal() { return std::sqrt(-2 * std::log(1 - uniform())) * std::cos(2 * std::numbers::pi * uniform()); }

double Dice::laplace() {
    const double u = uniform() - 0.5;
    return (u < 0 ? 1 : -1) * std::log(1 - 2 * std::abs(u));
}

void TraceMaker::mark(const std::string& text) { rows_.emplace_back(Mark{fromSeconds(time_s_), text}); }

double TraceMaker::averaged(double from_s, double to_s) const {
    const auto mean = [&](double a, double b) {
        if (b <= a) return 0.0;
        if (moveEnd_s_ < 0) return level_V_;
        // Integrate the straight movement piece by piece.
        const int steps = 64;
        double sum = 0;
        for (int i = 0; i < steps; ++i) {
            const double t = a + (b - a) * (i + 0.5) / steps;
            const double share = std::clamp((t - moveStart_s_) / (moveEnd_s_ - moveStart_s_), 0.0, 1.0);
            sum += moveFrom_V_ + share * (moveTo_V_ - moveFrom_V_);
        }
        return sum / steps;
    };
    double value = mean(from_s, to_s);
    for (std::size_t i = firstLive_; i < dropouts_.size(); ++i) {
        const TrueDropout& d = dropouts_[i];
        const double overlap_s = std::min(to_s, d.to_s) - std::max(from_s, d.from_s);
        if (overlap_s > 0) value += d.depth_V * overlap_s / (to_s - from_s);
    }
    if (ripple_V_ > 0) {
        const double w = 2 * std::numbers::pi * ripple_Hz_;
        value += ripple_V_ * (std::cos(w * from_s) - std::cos(w * to_s)) / (w * (to_s - from_s));
    }
    return value;
}

void TraceMaker::reading(double at_s) {
    Reading reading;
    reading.time = fromSeconds(at_s);
    reading.flags = flags_;
    if (flags_.none()) {
        const double from_s = at_s - meter_.aperture_s;
        const double clean = averaged(from_s, at_s);
        for (std::size_t i = firstLive_; i < dropouts_.size(); ++i) {
            TrueDropout& d = dropouts_[i];
            const double overlap_s = std::min(at_s, d.to_s) - std::max(from_s, d.from_s);
            if (overlap_s > 0)
                d.shownDepth_V = std::max(d.shownDepth_V, std::abs(d.depth_V) * overlap_s / meter_.aperture_s);
        }
        while (firstLive_ < dropouts_.size() && dropouts_[firstLive_].to_s < from_s) ++firstLive_;
        const double noise = heavy_ ? dice_.laplace() / std::numbers::sqrt2 : dice_.normal();
        const double noisy = clean + meter_.noise_V * noise;
        const double counts = std::round(noisy / meter_.resolution_V);
        reading.volts_V = std::round(counts * meter_.resolution_V * 1e6) / 1e6;
    }
    rows_.emplace_back(reading);
}

void TraceMaker::advance(double until_s) {
    while (next_s_ <= until_s) {
        if (drift_V_ != 0) level_V_ += drift_V_ * meter_.interval_s;
        if (!silent_) reading(std::max(next_s_, time_s_));
        next_s_ += meter_.interval_s + meter_.jitter_s * (2 * dice_.uniform() - 1);
    }
    time_s_ = until_s;
}

void TraceMaker::hold(double seconds_s) { advance(time_s_ + seconds_s); }

void TraceMaker::move(double level_V, double over_s) {
    moveFrom_V_ = level_V_;
    moveTo_V_ = level_V;
    moveStart_s_ = time_s_;
    moveEnd_s_ = time_s_ + over_s;
    advance(moveEnd_s_ + meter_.aperture_s);
    level_V_ = level_V;
    moveEnd_s_ = -1;
}

void TraceMaker::dropout(double after_s, double duration_s, double depth_V) {
    const double from_s = time_s_ + after_s;
    dropouts_.push_back({from_s, from_s + duration_s, depth_V, 0});
}

void TraceMaker::silence(double seconds_s) {
    silent_ = true;
    advance(time_s_ + seconds_s);
    silent_ = false;
}

void TraceMaker::flagged(double seconds_s, Flag flag) {
    flags_ = flag;
    advance(time_s_ + seconds_s);
    flags_ = {};
}

void TraceMaker::guidedEnds(double pressed_V, int presses) {
    const double rest_V = level_V_;
    mark("step:full-press");
    hold(1);
    for (int i = 0; i < presses; ++i) {
        press("pressed", pressed_V, 5);
        press("released", rest_V);
    }
    mark("step:release");
    for (int i = 0; i < 3; ++i) {
        press("pressed", pressed_V);
        press("released", rest_V);
    }
    mark("step:end");
}

void TraceMaker::guidedStart(double reference_V, double ground_V) {
    const double rest_V = level_V_;
    mark("key:on");
    mark("step:reference");
    hold(0.8);
    move(reference_V, 0.4);
    hold(6);
    mark("step:ground");
    hold(0.8);
    move(ground_V, 0.4);
    hold(6);
    mark("step:cold-start");
    hold(0.8);
    move(rest_V, 0.4);
    hold(30);
}

void TraceMaker::wiggle(const std::string& step, const std::string& where, int poses, int every, double depth_V,
                        double duration_s, double play_V) {
    mark("step:" + step);
    hold(2);
    const double rest_V = level_V_;
    for (int i = 0; i < poses; ++i) {
        mark("pose:" + where + (i % 2 == 0 ? "left" : "right"));
        const double reaction_s = dice_.between(0.3, 0.7);
        hold(reaction_s);
        if (play_V != 0) set(rest_V + (i % 2 == 0 ? play_V : -play_V));
        const double pose_s = 3 * meter_.interval_s + meter_.interval_s * dice_.uniform() + 0.8;
        if (every > 0 && (i + 1) % every == 0)
            dropout(dice_.uniform() * std::max(0.0, pose_s - reaction_s - duration_s), duration_s, depth_V);
        hold(pose_s - reaction_s);
    }
    set(rest_V);
    hold(1);
}

void TraceMaker::press(const std::string& position, double level_V, double hold_s) {
    mark("position:" + position);
    hold(dice_.between(0.3, 0.9));
    move(level_V, dice_.between(0.3, 0.8));
    hold(hold_s);
}

MeterTraits TraceMaker::traits() const {
    MeterTraits traits;
    traits.name = "test meter";
    traits.interval_s = meter_.interval_s;
    traits.aperture_s = meter_.aperture_s;
    traits.ranges.push_back({6.0, meter_.resolution_V, meter_.percent, meter_.counts});
    return traits;
}

Sheet fallingSheet() {
    Sheet sheet;
    sheet.name = "inching pedal of the checks";
    sheet.positions = {{"released", {4.2, 4.8}, 4.5, true}, {"pressed", {0.8, 1.0}, 0.9, false}};
    sheet.driftAllowance_V = 0.03;
    sheet.drive = Drive{3.7, 4.2, 0.05};
    return sheet;
}

Sheet risingSheet() {
    Sheet sheet;
    sheet.name = "rising pedal of the checks";
    sheet.positions = {{"released", {0.70, 0.95}, 0.82, true}, {"pressed", {3.9, 4.3}, 4.1, false}};
    sheet.driftAllowance_V = 0.05;
    sheet.drive = Drive{1.1, 3.6, 0.05};
    return sheet;
}

Findings examine(const std::vector<std::variant<Reading, Mark>>& rows, const Sheet& sheet, const MeterTraits& meter,
                 BlackLead black) {
    return examine(rows, {sheet, meter, true, ProbeSide::sensorSide, black});
}

Findings examine(const std::vector<std::variant<Reading, Mark>>& rows, ExaminationSetup setup) {
    Examination examination(std::move(setup));
    for (const auto& row : rows) {
        if (const auto* reading = std::get_if<Reading>(&row))
            examination.push(*reading);
        else
            examination.push(std::get<Mark>(row));
    }
    return examination.findings();
}

Findings examine(const TraceMaker& trace, const Sheet& sheet, BlackLead black) {
    return examine(trace.rows(), sheet, trace.traits(), black);
}

int dropoutCount(const Findings& findings) {
    return static_cast<int>(std::count_if(findings.excursions.begin(), findings.excursions.end(),
                                          [](const Excursion& e) { return e.kind == ExcursionKind::dropout; }));
}

} // namespace stillwire::test
