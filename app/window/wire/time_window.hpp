// SPDX-License-Identifier: GPL-3.0-or-later
// Which stretch of the session is on show: following its end, or held still where somebody looks. Pure state.
#pragma once

#include <algorithm>
#include <cmath>

namespace stillwire {

class TimeWindow {
public:
    static constexpr double kShortest_s = 2, kUsual_s = 75;

    void setEnd(double end_s) {
        end_s_ = std::max(0.0, end_s);
        if (whole_) from_s_ = 0, span_s_ = wholeSpan_s();
    }
    void expect(double length_s) { expected_s_ = length_s; } // of a capture still being read; 0: not known
    void follow() { following_ = true, whole_ = false; }
    void showAll() { // and goes on doing so while the session grows
        following_ = false;
        whole_ = true;
        setEnd(end_s_);
    }
    void zoom(double factor) { // about the middle; at the end while following
        whole_ = false;
        const double middle = following_ ? end_s_ : 0.5 * (from_s() + to_s());
        const double anchor = following_ ? 1.0 : 0.5;
        span_s_ = std::clamp(span_s_ * factor, kShortest_s, std::max(kUsual_s, end_s_));
        from_s_ = middle - anchor * span_s_;
        clamp();
    }
    void scroll(double spans) { // in parts of what is on show
        whole_ = false;
        from_s_ = from_s() + spans * span_s_;
        following_ = from_s_ + span_s_ >= end_s_;
        clamp();
    }
    void showSpan(double from_s, double to_s) {
        span_s_ = std::max(kShortest_s, to_s - from_s);
        from_s_ = from_s;
        following_ = whole_ = false;
        clamp();
    }
    void lookAt(double time_s) { // a third from the left, so that what followed is seen
        from_s_ = time_s - span_s_ / 3;
        following_ = whole_ = false;
        clamp();
    }

    [[nodiscard]] bool following() const { return following_; }
    [[nodiscard]] bool whole() const { return whole_; }
    // Following goes in steps: between them the picture stands still, and only its end grows.
    [[nodiscard]] double from_s() const {
        const double step_s = span_s_ / 15;
        return following_ ? step_s * std::max(0.0, std::ceil((end_s_ - span_s_) / step_s - 1e-9)) : from_s_;
    }
    [[nodiscard]] double to_s() const { return from_s() + span_s_; }
    [[nodiscard]] double end_s() const { return end_s_; }
    [[nodiscard]] double span_s() const { return span_s_; }

private:
    [[nodiscard]] double wholeSpan_s() const { return std::max({kShortest_s, end_s_, expected_s_}); }
    void clamp() { from_s_ = std::clamp(from_s_, 0.0, std::max(0.0, end_s_ - span_s_)); }

    double end_s_ = 0, expected_s_ = 0, span_s_ = kUsual_s, from_s_ = 0;
    bool following_ = true, whole_ = false;
};

} // namespace stillwire
