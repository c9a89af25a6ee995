// SPDX-License-Identifier: GPL-3.0-or-later
// families --list | NAME|all [--seeds N] [--from SEED] [--windows on|off|both] [--misses N] [--kind KIND] [--laws N]
//          [--jobs N] [--write DIR]
#include "tests/core/families/run.hpp"
#include "tests/core/families/write_case.hpp"

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <optional>

namespace {

using namespace stillwire::families;

constexpr const char* kUsage =
    "families --list\n"
    "families NAME|all [--seeds N] [--from SEED] [--windows on|off|both]   a row of the table\n"
    "  --misses N    the first N misses in words, a dozen readings around each\n"
    "  --kind KIND   only misses of a kind: unseen false-flag move sweep wiggle calm plateau blind\n"
    "                false-travel false-jump false-wiggle false-blind law\n"
    "  --laws N      examine every Nth seed in the other ways too (default 10; 0: none)\n"
    "  --teller X    analyser (default), truth (has to be faultless), or threshold (true levels, dropouts by the\n"
    "                stated threshold reading by reading: what can be reached that way)\n"
    "  --jobs N      so many at a time (default 1)\n"
    "  --write DIR   each case as files, as the practice scorer reads them; nothing is scored\n";

struct Options {
    std::string name, writeTo;
    RunOrder order;
    int seeds = 0; // 0: as many as the family takes in every run
    bool on = true, off = true;
};

std::optional<Options> parse(int count, char** words) {
    Options options;
    options.name = words[1];
    for (int i = 2; i + 1 < count; i += 2) {
        const std::string key = words[i], value = words[i + 1];
        const long number = std::strtol(value.c_str(), nullptr, 10);
        if (key == "--seeds") {
            options.seeds = static_cast<int>(number);
        } else if (key == "--from") {
            options.order.firstSeed = std::strtoull(value.c_str(), nullptr, 10);
        } else if (key == "--windows" && (value == "on" || value == "off" || value == "both")) {
            options.on = value != "off";
            options.off = value != "on";
        } else if (key == "--misses") {
            options.order.missesWanted = static_cast<std::size_t>(number);
        } else if (key == "--kind") {
            options.order.missKind = value;
        } else if (key == "--laws") {
            options.order.lawsEvery = static_cast<int>(number);
        } else if (key == "--teller" && (value == "analyser" || value == "truth" || value == "threshold")) {
            options.order.teller = value == "truth"       ? Teller::truth
                                   : value == "threshold" ? Teller::threshold
                                                          : Teller::analyser;
        } else if (key == "--jobs") {
            options.order.jobs = static_cast<int>(number);
        } else if (key == "--write") {
            options.writeTo = value;
        } else {
            return std::nullopt;
        }
    }
    if (count % 2 != 0) return std::nullopt;
    return options;
}

bool writeAll(const Options& options, const RunOrder& order) {
    for (int i = 0; i < order.seeds; ++i) {
        const Trace trace = make(*order.family, order.firstSeed + static_cast<std::uint64_t>(i), order.windowsOn);
        if (writeCase(trace, options.writeTo)) continue;
        std::fprintf(stderr, "cannot write into %s\n", options.writeTo.c_str());
        return false;
    }
    return true;
}

bool one(const Options& options, const Family& family, bool windowsOn) {
    RunOrder order = options.order;
    order.family = &family;
    order.windowsOn = windowsOn;
    order.seeds = options.seeds > 0 ? options.seeds : family.quickSeeds;
    if (!options.writeTo.empty()) return writeAll(options, order);
    const RunResult result = run(order);
    std::fputs(tableRow(family, windowsOn, result.score).c_str(), stdout);
    for (const MissSeen& m : result.misses)
        std::printf("\n%s seed %llu windows %s at %.3f s: %s\n  expected %s\n  told     %s\n%s", family.name,
                    static_cast<unsigned long long>(m.seed), windowsOn ? "on" : "off", m.miss.at_s,
                    m.miss.kind.c_str(), m.miss.expected.c_str(), m.miss.told.c_str(), m.context.c_str());
    std::fflush(stdout);
    return true;
}

} // namespace

int main(int count, char** words) {
    if (count == 2 && std::strcmp(words[1], "--list") == 0) {
        for (const Family& family : families()) std::printf("%-14s %s\n", family.name, family.says);
        return 0;
    }
    const std::optional<Options> options = count < 2 ? std::nullopt : parse(count, words);
    if (!options) {
        std::fputs(kUsage, stderr);
        return 2;
    }
    const Family* only = findFamily(options->name);
    if (!only && options->name != "all") {
        std::fprintf(stderr, "no family %s; families --list names them\n", options->name.c_str());
        return 2;
    }
    if (options->writeTo.empty()) std::fputs(tableHead().c_str(), stdout);
    for (const Family& family : families()) {
        if (only && only != &family) continue;
        if (options->on && !family.windowsAlwaysOff && !one(*options, family, true)) return 1;
        if ((options->off || family.windowsAlwaysOff) && !one(*options, family, false)) return 1;
    }
    return 0;
}
