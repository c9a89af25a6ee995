// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of the table of verdicts: many seeds of one bench, judged and held against what is signable.
#pragma once

#include "core/examination.hpp"
#include "tests/meters/bench/signable.hpp"
#include "tests/support/bench_runs.hpp"

#include <functional>
#include <map>
#include <string>

namespace stillwire::test {

// The whole path but the bytes: rows in, findings out.
[[nodiscard]] Findings judged(const Simulation& simulation);

struct VerdictTally {
    int all = 0, right = 0;
    int strict = 0;   // of those, the very answer of the row order
    int unseen = 0;   // of those, kept though there is a fault: it never showed in a reading
    int dark = 0;     // of those, by where the meter left its range
    int couldNot = 0; // of those, cannot-tell where the meter was blind or did not settle
    int keptInSight = 0;
    int ranked = 0, rankable = 0; // runs that list a second cause, of those where the truth has two
    std::map<std::string, int> wrong;
    std::string firstWrong;

    void add(const VerdictTally& other);
};

// Seeds 1 to `seeds`, the five meters in turn.
[[nodiscard]] VerdictTally tallyVerdicts(const BenchScript& script, const Sheet& sheet, int seeds);
void print(const std::string& name, const VerdictTally& tally);

} // namespace stillwire::test
