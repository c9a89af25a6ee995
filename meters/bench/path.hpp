// SPDX-License-Identifier: GPL-3.0-or-later
// A quantity that moves in straight pieces: the pedal, the shaft behind its lost motion, the side load.
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

namespace stillwire::bench {

inline constexpr double kNever_s = std::numeric_limits<double>::infinity();

class Path {
public:
    explicit Path(double start = 0) : knots_{{0, start}} {}

    [[nodiscard]] double at(double t_s) const;
    [[nodiscard]] bool moving(double t_s) const { return t_s < knots_.back().t_s; }
    [[nodiscard]] double nextKnot(double t_s) const; // the first after t_s; kNever_s if it rests
    [[nodiscard]] double target() const { return knots_.back().value; }
    void jump(double t_s, double value); // rests there from now
    // Straight to `target`, over `length_s`.
    void goTo(double t_s, double target, double length_s);
    // As a hand or a spring moves: slow, fast, slow (a smooth step in six pieces).
    void ease(double t_s, double target, double length_s);
    // What follows `leader` through lost motion of `slack` in all, from where this is now.
    void follow(double t_s, const Path& leader, double slack);

private:
    struct Knot {
        double t_s, value;
    };
    std::vector<Knot> knots_;      // times rise; before the first and after the last it rests
    mutable std::size_t hint_ = 0; // queries come in order of time
};

} // namespace stillwire::bench
