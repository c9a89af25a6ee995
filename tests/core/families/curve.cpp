// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/curve.hpp"

#include <algorithm>

namespace stillwire::families {

void Curve::add(double at_s, double value) {
    double area = 0;
    if (!knots_.empty()) {
        const Knot& last = knots_.back();
        area = last.area + 0.5 * (last.value + value) * (at_s - last.at_s);
    }
    knots_.push_back({at_s, value, area});
}

std::size_t Curve::pieceAt(double at_s) const {
    const auto after = std::upper_bound(knots_.begin(), knots_.end(), at_s,
                                        [](double t, const Knot& knot) { return t < knot.at_s; });
    return static_cast<std::size_t>(after - knots_.begin()) - 1;
}

double Curve::at(double at_s) const {
    if (at_s < knots_.front().at_s) return knots_.front().value;
    const std::size_t i = pieceAt(at_s);
    if (i + 1 == knots_.size()) return knots_.back().value;
    const Knot &a = knots_[i], &b = knots_[i + 1];
    return a.value + (b.value - a.value) * (at_s - a.at_s) / (b.at_s - a.at_s);
}

double Curve::upTo(double at_s) const {
    if (at_s < knots_.front().at_s) return knots_.front().value * (at_s - knots_.front().at_s);
    const Knot& knot = knots_[pieceAt(at_s)];
    return knot.area + 0.5 * (knot.value + at(at_s)) * (at_s - knot.at_s);
}

double Curve::mean(double from_s, double to_s) const {
    return to_s > from_s ? area(from_s, to_s) / (to_s - from_s) : at(to_s);
}

} // namespace stillwire::families
