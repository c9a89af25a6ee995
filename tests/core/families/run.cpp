// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/families/run.hpp"

#include "tests/support/findings_text.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <map>
#include <mutex>
#include <thread>

namespace stillwire::families {
namespace {

// The line in which two texts begin to differ.
std::string firstDifference(const std::string& a, const std::string& b) {
    const std::size_t shorter = std::min(a.size(), b.size());
    std::size_t at = 0, line = 0;
    for (; at < shorter && a[at] == b[at]; ++at)
        if (a[at] == '\n') line = at + 1;
    const auto lineOf = [&](const std::string& of) { return of.substr(std::min(line, of.size()), 160); };
    return "\"" + lineOf(a).substr(0, lineOf(a).find('\n')) + "\" against \"" +
           lineOf(b).substr(0, lineOf(b).find('\n')) + "\"";
}

// The same rows come to the same however they are handed over, and marks that mean nothing change nothing.
void otherWays(const Trace& trace, const ExaminationSetup& setup, const Findings& once, Score& into, Misses misses) {
    const std::string text = test::findingsText(once);
    const auto same = [&](const char* way, const Findings& other) {
        const std::string otherText = test::findingsText(other);
        if (text == otherText) return;
        ++into.lawsBroken;
        if (misses)
            misses->push_back({"law", 0, std::string("the same findings ") + way, firstDifference(text, otherText)});
    };
    same("one by one", examineOneByOne(trace, setup, 0));
    same("in batches of seven", examineInBatches(trace, setup, 7));
    same("asked every now and then", examineOneByOne(trace, setup, 211));
    if (!trace.marks.empty()) {
        Trace bare = trace;
        bare.marks.clear();
        same("without the notes", examineInBatches(bare, setup, 256));
    }
}

RunResult runOne(const RunOrder& order, std::uint64_t seed, bool withWords) {
    RunResult result;
    const Trace trace = make(*order.family, seed, order.windowsOn);
    std::vector<Miss> misses;
    Told told;
    if (order.teller == Teller::analyser) {
        ExaminationSetup setup = setupFor(trace);
        setup.tuning = order.tuning;
        const auto begin = std::chrono::steady_clock::now();
        const Findings findings = examineInBatches(trace, setup, 256);
        const std::chrono::duration<double> took_s = std::chrono::steady_clock::now() - begin;
        told = toldBy(findings);
        result.score.examine_s = took_s.count();
        if (order.lawsEvery > 0 && seed % static_cast<std::uint64_t>(order.lawsEvery) == 0)
            otherWays(trace, setup, findings, result.score, withWords ? &misses : nullptr);
    } else {
        told = order.teller == Teller::truth ? tellAll(trace) : tellByThreshold(trace);
    }
    result.score.add(score(trace, told, withWords ? &misses : nullptr));
    for (Miss& miss : misses) {
        if (!order.missKind.empty() && miss.kind != order.missKind) continue;
        std::string context = readingsAround(trace, told, miss.at_s);
        result.misses.push_back({seed, std::move(miss), std::move(context)});
    }
    return result;
}

} // namespace

RunResult run(const RunOrder& order) {
    std::atomic<int> next{0};
    std::mutex mutex;
    std::map<std::uint64_t, RunResult> bySeed;
    std::atomic<std::size_t> missesSoFar{0};
    const auto work = [&] {
        for (int i = next++; i < order.seeds; i = next++) {
            const std::uint64_t seed = order.firstSeed + static_cast<std::uint64_t>(i);
            RunResult one = runOne(order, seed, missesSoFar < order.missesWanted);
            missesSoFar += one.misses.size();
            const std::scoped_lock lock(mutex);
            bySeed[seed] = std::move(one);
        }
    };
    std::vector<std::thread> others;
    for (int j = 1; j < order.jobs; ++j) others.emplace_back(work);
    work();
    for (std::thread& other : others) other.join();
    RunResult all;
    for (auto& [seed, one] : bySeed) {
        all.score.add(one.score);
        for (MissSeen& miss : one.misses)
            if (all.misses.size() < order.missesWanted) all.misses.push_back(std::move(miss));
    }
    return all;
}

} // namespace stillwire::families
