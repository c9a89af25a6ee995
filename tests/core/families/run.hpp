// SPDX-License-Identifier: GPL-3.0-or-later
// Many seeds of one family through the analyser of today: a row of a table, and the misses in words.
#pragma once

#include "core/explain/tuning.hpp"
#include "tests/core/families/families.hpp"
#include "tests/core/families/oracle.hpp"
#include "tests/core/families/score.hpp"

#include <functional>
#include <string>

namespace stillwire::families {

struct RunOrder {
    const Family* family = nullptr;
    bool windowsOn = false;
    std::uint64_t firstSeed = 1;
    int seeds = 30;
    int lawsEvery = 10; // every how many-th trace is examined in the other ways too; 0: none
    int jobs = 1;
    Teller teller = Teller::analyser;
    Tuning tuning{};
    std::size_t missesWanted = 0;
    std::string missKind; // only these; empty: all
};

struct MissSeen {
    std::uint64_t seed = 0;
    Miss miss;
    std::string context; // the readings around it
};

struct RunResult {
    Score score;
    std::vector<MissSeen> misses; // by seed and time
};

[[nodiscard]] RunResult run(const RunOrder& order);

// A dozen readings around a time: what was shown, what is true, what was told.
[[nodiscard]] std::string readingsAround(const Trace& trace, const Told& told, double at_s);

[[nodiscard]] std::string tableHead();
[[nodiscard]] std::string tableRow(const Family& family, bool windowsOn, const Score& score);

} // namespace stillwire::families
