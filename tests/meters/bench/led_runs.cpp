// SPDX-License-Identifier: GPL-3.0-or-later
// Whole led runs with each fault and meter, in two tables: was a good sensor ever condemned, and how soon does the
// verdict stand?
#include "tests/meters/bench/led_options.hpp"
#include "tests/meters/bench/led_tables.hpp"

#include <algorithm>
#include <atomic>
#include <cstdio>
#include <thread>

namespace {

using namespace stillwire::led;

// Each run is alone with its seed, so that the order in which they are played changes nothing.
std::vector<LedRun> playAll(const Options& options) {
    std::vector<LedRun> runs(options.subjects.size());
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < runs.size(); i = next++) runs[i] = ledRun(options.subjects[i]);
    };
    std::vector<std::thread> others;
    for (unsigned j = 1; j < options.jobs; ++j) others.emplace_back(work);
    work();
    for (std::thread& other : others) other.join();
    return runs;
}

} // namespace

int main(int count, char** words) {
    const std::optional<Options> options = parseOptions(count, words);
    if (!options) {
        std::fputs(kUsage, stderr);
        return 2;
    }
    const std::vector<LedRun> runs = playAll(*options);
    printEnds(runs);
    std::printf("\n");
    printTimes(runs);
    if (options->misses) {
        std::printf("\n");
        printMisses(runs);
    }
    const auto wrong = std::count_if(runs.begin(), runs.end(), [](const LedRun& r) { return r.replacedWrongly(); });
    if (!options->atMostWrong || wrong <= static_cast<std::ptrdiff_t>(*options->atMostWrong)) return 0;
    std::fprintf(stderr, "replace was said under another truth in %td runs, and may be in %u\n", wrong,
                 *options->atMostWrong);
    return 1;
}
