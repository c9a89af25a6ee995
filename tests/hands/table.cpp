// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/table.hpp"

#include "tests/hands/text.hpp"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <fstream>
#include <mutex>
#include <thread>

namespace stillwire::hands {
namespace {

void dump(const LedRun& run, const std::string& folder) {
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    const std::filesystem::path base = std::filesystem::path(folder) / nameOf(run.request);
    std::ofstream(base.string() + ".csv", std::ios::binary) << run.capture;
    std::ofstream(base.string() + ".truth.toml", std::ios::binary) << truthToml(run);
}

std::string actsOf(const LedRun& run) {
    std::string all;
    for (const Act& a : run.acts)
        all += text("%s%s in %s %.1f to %.1f s %+.2f V", all.empty() ? "" : "; ",
                    std::string(row(a.kind).name).c_str(), a.step.c_str(), a.from_s, a.to_s, a.depth_V);
    return all;
}

// What was asked for is done, until it is decided; three times at most.
Judged afterRepeats(Request request, Judged judged) {
    for (int round = 0; round < 3 && judged.decision == Decision::cannotTell && !judged.again.empty(); ++round) {
        request.again.insert(request.again.end(), judged.again.begin(), judged.again.end());
        judged = judge(*makeRun(request));
    }
    return judged;
}

void count(const RowOrder& order, std::uint64_t seed, Row& row, std::mutex& mutex) {
    Request request = order.request;
    request.seed = seed;
    const std::optional<LedRun> run = makeRun(request);
    if (!run) return;
    if (!order.dumpTo.empty()) dump(*run, order.dumpTo);
    const Judged judged = judge(*run);
    const bool good = right(*run, judged);
    const Judged after = afterRepeats(request, judged);
    const bool named = judged.decision != Decision::cannotTell || !judged.again.empty();
    Told told{request, judged, run->subject.meter.words(), run->subject.machine.name, actsOf(*run)};
    const std::scoped_lock lock(mutex);
    ++row.runs;
    row.right += good;
    row.rightAfter += right(*run, after);
    row.unnamed += !named;
    ++row.by[static_cast<std::size_t>(judged.decision)];
    ++row.after[static_cast<std::size_t>(after.decision)];
    if (good && !right(*run, after)) row.wrong.push_back({request, after, told.meter, told.machine, told.acts});
    if (!good)
        row.wrong.push_back(std::move(told));
    else if (judged.decision == Decision::cannotTell)
        row.cannotTell.push_back(std::move(told));
}

void bySeed(std::vector<Told>& all) {
    std::sort(all.begin(), all.end(), [](const Told& a, const Told& b) { return a.request.seed < b.request.seed; });
}

} // namespace

void Row::add(const Row& other) {
    runs += other.runs;
    right += other.right;
    rightAfter += other.rightAfter;
    unnamed += other.unnamed;
    for (std::size_t i = 0; i < by.size(); ++i) by[i] += other.by[i];
    for (std::size_t i = 0; i < after.size(); ++i) after[i] += other.after[i];
    wrong.insert(wrong.end(), other.wrong.begin(), other.wrong.end());
    cannotTell.insert(cannotTell.end(), other.cannotTell.begin(), other.cannotTell.end());
}

Row runRow(const RowOrder& order, const std::string& name) {
    Row row;
    row.name = name;
    std::mutex mutex;
    std::atomic<int> next{0};
    const auto work = [&] {
        for (int i = next++; i < order.seeds; i = next++)
            count(order, order.request.seed + static_cast<std::uint64_t>(i), row, mutex);
    };
    std::vector<std::thread> others;
    for (int j = 1; j < order.jobs; ++j) others.emplace_back(work);
    work();
    for (std::thread& other : others) other.join();
    bySeed(row.wrong);
    bySeed(row.cannotTell);
    return row;
}

std::string tableHead() {
    return text("%-36s%6s%6s%8s%9s%8s%8s%8s%9s%8s%8s%9s%9s%9s\n", "fault/kind/step", "runs", "keep", "cannot",
                "replace", "wiring", "supply", "adjust", "linkage", "right%", "wrong", "keep+%", "right+%",
                "unnamed");
}

std::string tableRow(const Row& row) {
    const auto n = [&](Decision d) { return row.by[static_cast<std::size_t>(d)]; };
    const auto share = [&](int count) { return row.runs > 0 ? 100.0 * count / row.runs : 0; };
    return text("%-36s%6d%6d%8d%9d%8d%8d%8d%9d%8.1f%8d%9.1f%9.1f%9d\n", row.name.c_str(), row.runs, n(Decision::keep),
                n(Decision::cannotTell), n(Decision::replace), n(Decision::checkWiring), n(Decision::checkSupply),
                n(Decision::adjust), n(Decision::checkLinkage), share(row.right), row.runs - row.right,
                share(row.after[static_cast<std::size_t>(Decision::keep)]), share(row.rightAfter), row.unnamed);
}

std::string line(const Told& t) {
    std::string all =
        text("  --fault %s --kind %s", std::string(row(t.request.fault).name).c_str(), t.request.kind.c_str());
    if (!t.request.step.empty()) all += " --step " + t.request.step;
    all += text(" --seed %llu", static_cast<unsigned long long>(t.request.seed));
    if (t.request.oldSteps) all += " --old-steps";
    if (!t.request.spare) all += " --no-spare";
    if (t.request.quickLead) all += " --quick-lead";
    all += "  " + std::string(t.judged.error.empty() ? decisionName(t.judged.decision) : "ERROR") + " (" + t.meter +
           "; " + t.machine + ")\n      " + (t.acts.empty() ? "" : t.acts + "\n      ") +
           (t.judged.error.empty() ? t.judged.reason : t.judged.error) + "\n";
    for (const std::string& next : t.judged.next) all += "      next: " + next + "\n";
    for (const Step step : t.judged.again) all += "      again: " + std::string(stepName(step)) + "\n";
    return all;
}

} // namespace stillwire::hands
