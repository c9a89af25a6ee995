// SPDX-License-Identifier: GPL-3.0-or-later
// Counting and printing, a row for each fault and meter.
#include "tests/meters/bench/led_tables.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <span>
#include <string>

namespace stillwire::led {
namespace {

using Runs = std::span<const LedRun>;

std::string faultOf(const LedRun& run) {
    return run.subject.fault ? std::string(faultName(*run.subject.fault)) : "good";
}

// Calls `print` with the runs of each fault and meter.
template <class Print> void forEachRow(Runs runs, Print&& print) {
    for (std::size_t from = 0, to = 0; from < runs.size(); from = to) {
        const Subject& first = runs[from].subject;
        while (to < runs.size() && runs[to].subject.fault == first.fault && runs[to].subject.meter == first.meter)
            ++to;
        print(faultOf(runs[from]), meterName(first.meter), runs.subspan(from, to - from));
    }
}

void printEnd(const std::string& fault, const char* meter, Runs runs) {
    std::map<Decision, int> wrong;
    for (const LedRun& run : runs)
        if (!run.right()) ++wrong[run.said];
    std::printf("%-24s%-9s%5zu%7td%9td", fault.c_str(), meter, runs.size(),
                std::count_if(runs.begin(), runs.end(), [](const LedRun& r) { return r.right(); }),
                std::count_if(runs.begin(), runs.end(), [](const LedRun& r) { return r.replacedWrongly(); }));
    const char* before = "   ";
    for (const auto& [decision, count] : wrong) {
        std::printf("%s%s %d", before, decisionName(decision), count);
        before = ", ";
    }
    std::printf("\n");
}

// The smallest that nine of ten do not exceed.
double nineTenths_s(std::vector<double> all_s) {
    std::sort(all_s.begin(), all_s.end());
    return all_s[(9 * all_s.size() + 9) / 10 - 1];
}

void printTime(const std::string& what, const char* meter, const std::vector<double>& all_s) {
    std::printf("%-24s%-9s%5zu", what.c_str(), meter, all_s.size());
    if (all_s.empty())
        std::printf("%10s%9s\n", "-", "-");
    else
        std::printf("%10.1f%9.1f\n", medianOf(all_s), nineTenths_s(all_s));
}

} // namespace

void printEnds(const std::vector<LedRun>& runs) {
    std::printf("%-24s%-9s%5s%7s%9s   %s\n", "fault", "meter", "runs", "right", "replace*", "wrong ends");
    forEachRow(runs, printEnd);
    printEnd("all", "", runs);
    std::printf(
        "* said at any moment, while the truth asks for something else. The truth takes the mount as it stood at "
        "the\n  start: a sensor that was turned to its aim and ends as keep counts as wrong.\n");
    for (const LedRun& run : runs) {
        if (!run.finished) std::printf("  %s: never came to its end\n", subjectName(run.subject).c_str());
        if (!run.replacedWrongly()) continue;
        std::printf("  %s: replace at %.1f s, at the end %s, wanted %s\n      %s\n", subjectName(run.subject).c_str(),
                    run.replace->at_s, decisionName(run.said), decisionName(run.wanted), run.replace->why.c_str());
    }
}

void printTimes(const std::vector<LedRun>& runs) {
    std::printf("Seconds until the verdict stands, of runs that end right\n%-24s%-9s%5s%10s%9s\n", "fault", "meter",
                "runs", "median_s", "90%_s");
    std::map<Decision, std::vector<double>> byDecision;
    forEachRow(runs, [&](const std::string& fault, const char* meter, Runs row) {
        std::vector<double> all_s;
        for (const LedRun& run : row) {
            if (!run.right()) continue;
            all_s.push_back(run.stands_s);
            byDecision[run.said].push_back(run.stands_s);
        }
        printTime(fault, meter, all_s);
    });
    for (const auto& [decision, all_s] : byDecision)
        printTime("all " + std::string(decisionName(decision)), "", all_s);
}

void printMisses(const std::vector<LedRun>& runs) {
    std::printf("Runs that end wrong\n");
    for (const LedRun& run : runs) {
        if (run.right()) continue;
        std::printf("  %s: %s, wanted %s\n      %s\n      %s\n", subjectName(run.subject).c_str(),
                    decisionName(run.said), decisionName(run.wanted), run.why.c_str(), run.steps.c_str());
    }
}

} // namespace stillwire::led
