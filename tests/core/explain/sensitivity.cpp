// SPDX-License-Identifier: GPL-3.0-or-later
// How much hangs on each figure of the tuning: a few families with it halved, as it is, and doubled.
// sensitivity [--seeds N] [--from SEED] [--families NAME,NAME...] [--figure TEXT] [--jobs N]
#include "tests/core/explain/figures.hpp"
#include "tests/core/families/run.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <sstream>

namespace {

using namespace stillwire;
using explain::Figure;
using families::Family;
using families::RunOrder;
using families::Score;
using families::Share;

constexpr const char* kUsage =
    "sensitivity                       a row for every figure: its value, the table's figures with it halved and\n"
    "                                  doubled, as differences from the row at the top; a dot where nothing changes\n"
    "  --seeds N                       of each family (default 10)\n"
    "  --from SEED                     the first of them (default 1)\n"
    "  --families NAME,NAME...         (default plain,steps,bursts,sweeps,presses,tremor)\n"
    "  --figure TEXT                   only figures with this in their name\n"
    "  --jobs N                        so many traces at a time (default 1)\n";

struct Options {
    std::vector<const Family*> families;
    std::string figure;
    std::uint64_t from = 1;
    int seeds = 10, jobs = 1;
};

std::optional<std::vector<const Family*>> named(const std::string& list) {
    std::vector<const Family*> all;
    std::istringstream names(list);
    for (std::string name; std::getline(names, name, ',');) {
        const Family* family = families::findFamily(name);
        if (!family) {
            std::fprintf(stderr, "no family %s; families --list names them\n", name.c_str());
            return std::nullopt;
        }
        all.push_back(family);
    }
    return all;
}

std::optional<Options> parse(int count, char** words) {
    Options options;
    std::string families = "plain,steps,bursts,sweeps,presses,tremor";
    for (int i = 1; i < count; i += 2) {
        if (i + 1 == count) return std::nullopt;
        const std::string key = words[i], value = words[i + 1];
        if (key == "--families")
            families = value;
        else if (key == "--figure")
            options.figure = value;
        else if (key == "--from")
            options.from = std::strtoull(value.c_str(), nullptr, 10);
        else if (key == "--seeds")
            options.seeds = static_cast<int>(std::strtol(value.c_str(), nullptr, 10));
        else if (key == "--jobs")
            options.jobs = static_cast<int>(std::strtol(value.c_str(), nullptr, 10));
        else
            return std::nullopt;
    }
    auto all = named(families);
    if (!all || all->empty() || options.seeds < 1) return std::nullopt;
    options.families = *std::move(all);
    return options;
}

// All the families together.
Score scoreWith(const Tuning& tuning, const Options& options) {
    Score all;
    for (const Family* family : options.families) {
        RunOrder order;
        order.family = family;
        order.firstSeed = options.from;
        order.seeds = options.seeds;
        order.jobs = options.jobs;
        order.lawsEvery = 0;
        order.tuning = tuning;
        all.add(families::run(order).score);
    }
    return all;
}

// The columns: shares in percent, and flags where nothing was.
struct Columns {
    double seen, falseFlags, moves, wiggles, calm;
    explicit Columns(const Score& s)
        : seen(s.seen.percent()), falseFlags(s.falseFlags), moves(s.moves.percent()), wiggles(s.wiggles.percent()),
          calm(s.calm.percent()) {}
};

constexpr const char* kHead = "%-27s%9s |%8s%7s%8s%8s%8s |%8s%7s%8s%8s%8s\n";

std::string difference(double now, double before, int width, int places) {
    const double by = now - before;
    if (std::abs(by) < 0.5 * std::pow(10, -places)) return families::text("%*s", width, ".");
    return families::text("%+*.*f", width, places, by);
}

std::string columnsWith(const Figure& figure, double by, const Columns& before, const Options& options) {
    Tuning tuning{};
    if (!figure.multiply(tuning, by)) return families::text(" |%39s", "-");
    const Columns now(scoreWith(tuning, options));
    return " |" + difference(now.seen, before.seen, 8, 2) + difference(now.falseFlags, before.falseFlags, 7, 0) +
           difference(now.moves, before.moves, 8, 2) + difference(now.wiggles, before.wiggles, 8, 2) +
           difference(now.calm, before.calm, 8, 2);
}

} // namespace

int main(int count, char** words) {
    const std::optional<Options> options = parse(count, words);
    if (!options) {
        std::fputs(kUsage, stderr);
        return 2;
    }
    const Columns before(scoreWith(Tuning{}, *options));
    std::printf("%-36s |%8s%7s%8s%8s%8s\n", "", "seen%", "false", "moves%", "wiggle%", "calm%");
    std::printf("%-36s |%8.2f%7.0f%8.2f%8.2f%8.2f\n\n", "as it is", before.seen, before.falseFlags, before.moves,
                before.wiggles, before.calm);
    std::printf("%-36s |%39s |%39s\n", "", "halved", "doubled");
    std::printf(kHead, "figure", "value", "seen%", "false", "moves%", "wiggle%", "calm%", "seen%", "false", "moves%",
                "wiggle%", "calm%");
    for (const Figure& figure : explain::figures()) {
        if (figure.name.find(options->figure) == std::string::npos) continue;
        const std::string halved = columnsWith(figure, 0.5, before, *options);
        const std::string doubled = columnsWith(figure, 2, before, *options);
        std::printf("%-27s%9g%s%s\n", figure.name.c_str(), figure.value, halved.c_str(), doubled.c_str());
        std::fflush(stdout);
    }
    return 0;
}
