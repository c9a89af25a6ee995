// SPDX-License-Identifier: GPL-3.0-or-later
// Stays run on over marks and dropouts, and never from one wire to another.
#include "core/analyse/plateau_book.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

Plateau part(Time from, Time to, Wire wire, double level_V, bool moved) {
    Plateau plateau;
    plateau.from = from;
    plateau.to = to;
    plateau.place.wire = wire;
    plateau.level_V = level_V;
    plateau.readings = 10;
    plateau.moved = moved;
    return plateau;
}

Sheet sheet() {
    Sheet sheet;
    sheet.positions = {{"released", {0.7, 0.95}, 0.82, true}, {"pressed", {3.9, 4.3}, 4.1, false}};
    return sheet;
}

TEST(StaysOf, RunOnOverAMark) {
    const auto stays =
        staysOf({part(0s, 3s, Wire::signal, 0.80, true), part(4s, 9s, Wire::signal, 0.82, false)}, sheet());
    ASSERT_EQ(stays.size(), 1U);
    EXPECT_EQ(stays[0].to, Time(9s));
    EXPECT_NEAR(stays[0].level_V, 0.81, 1e-9); // by their readings
    EXPECT_EQ(stays[0].windows, std::vector<std::string>{"released"});
}

TEST(StaysOf, EndWithTheirWire) {
    const auto stays =
        staysOf({part(0s, 3s, Wire::reference, 4.99, true), part(4s, 9s, Wire::ground, 0.02, false)}, sheet());
    ASSERT_EQ(stays.size(), 2U);
    EXPECT_NEAR(stays[0].level_V, 4.99, 1e-9);
    EXPECT_NEAR(stays[1].level_V, 0.02, 1e-9);
}

} // namespace
} // namespace stillwire
