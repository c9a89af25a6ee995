// SPDX-License-Identifier: GPL-3.0-or-later
// One test a family and a setting of the windows; the row is printed in either test that uses it.
#pragma once

#include "tests/core/families/run.hpp"
#include "tests/support/long_run.hpp"

#include <cstdio>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire::families {

struct RowAsked {
    const Family* family;
    bool windowsOn;
};

inline std::vector<RowAsked> rowsAsked() {
    std::vector<RowAsked> rows;
    for (const Family& family : families()) {
        if (!family.windowsAlwaysOff) rows.push_back({&family, true});
        rows.push_back({&family, false});
    }
    return rows;
}

inline std::string rowName(const testing::TestParamInfo<RowAsked>& info) {
    std::string name = info.param.family->name;
    for (char& c : name)
        if (c == '-') c = '_';
    return name + (info.param.windowsOn ? "_on" : "_off");
}

// Tens of seeds in every run, 5,000 events a family in the long one.
inline Score printedRow(const RowAsked& asked) {
    RunOrder order;
    order.family = asked.family;
    order.windowsOn = asked.windowsOn;
    order.seeds = test::scaled(asked.family->quickSeeds, asked.family->longSeeds);
    const Score score = run(order).score;
    std::fputs((tableHead() + tableRow(*asked.family, asked.windowsOn, score)).c_str(), stdout);
    return score;
}

} // namespace stillwire::families
