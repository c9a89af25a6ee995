// SPDX-License-Identifier: GPL-3.0-or-later
// Another tuning is what the wire is explained by.
#include "core/examination.hpp"
#include "tests/support/trace_maker.hpp"

#include <gtest/gtest.h>

namespace stillwire::test {
namespace {

TEST(Tuning, OfTheSetupIsTheOneThatCounts) {
    TraceMaker trace({});
    trace.set(4.5);
    trace.dropout(20, 1.5, -1.0);
    trace.hold(40);
    const auto excursions = [&](double least_V) {
        ExaminationSetup setup;
        setup.sheet = fallingSheet();
        setup.meter = trace.traits();
        setup.tuning.reach.least_V = least_V;
        Examination examination(setup);
        for (const auto& row : trace.rows())
            if (const Reading* reading = std::get_if<Reading>(&row)) examination.push(*reading);
        return examination.findings().excursions.size();
    };
    EXPECT_EQ(excursions(Tuning{}.reach.least_V), 1U);
    EXPECT_EQ(excursions(3.0), 0U); // the dropout is no further off than that
}

} // namespace
} // namespace stillwire::test
