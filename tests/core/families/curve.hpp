// SPDX-License-Identifier: GPL-3.0-or-later
// A curve of straight pieces over time with its exact mean over any stretch, which is what an averaging meter sees.
#pragma once

#include <vector>

namespace stillwire::families {

class Curve {
public:
    // Times never decrease; two knots at one time are a leap. Before the first and after the last it stays level.
    void add(double at_s, double value);

    [[nodiscard]] bool empty() const { return knots_.empty(); }
    [[nodiscard]] double at(double at_s) const;
    [[nodiscard]] double mean(double from_s, double to_s) const;
    [[nodiscard]] double area(double from_s, double to_s) const { return upTo(to_s) - upTo(from_s); }
    [[nodiscard]] double from_s() const { return knots_.front().at_s; }
    [[nodiscard]] double to_s() const { return knots_.back().at_s; }

private:
    struct Knot {
        double at_s, value, area; // area: from the first knot to here
    };
    [[nodiscard]] double upTo(double at_s) const;
    [[nodiscard]] std::size_t
    pieceAt(double at_s) const; // last knot at or before; precondition: not before the first
    std::vector<Knot> knots_;
};

} // namespace stillwire::families
