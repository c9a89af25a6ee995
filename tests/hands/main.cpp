// SPDX-License-Identifier: GPL-3.0-or-later
// Led runs in which people do what people do, through the analyser: a table, and each wrong run with its seed.
#include "tests/hands/options.hpp"

#include <algorithm>
#include <cstdio>
#include <cstring>

namespace {

using namespace stillwire::hands;

void listKinds() {
    for (const KindRow& k : kKinds) {
        std::printf("%-18s%s\n%18s", std::string(k.name).c_str(), std::string(k.says).c_str(), "");
        for (const auto& [kind, step] : whatCanHappen(false))
            if (kind == k.kind) std::printf("%s ", step.c_str());
        std::printf("\n");
    }
}

void print(const Row& row, const Options& options) {
    std::fputs(tableRow(row).c_str(), stdout);
    std::fflush(stdout);
    if (options.undecided)
        for (const Told& told : row.cannotTell) std::fputs(line(told).c_str(), stdout);
}

std::string wrongWith(const Row& row, const Options& options) {
    std::string all;
    for (std::size_t i = 0; i < std::min(options.list, row.wrong.size()); ++i) all += line(row.wrong[i]);
    return all;
}

// All steps of a kind; each step has runs of its own.
Row kindRow(const Options& options, RowOrder order, const std::string& kind, std::string& wrong) {
    const std::string fault(row(order.request.fault).name);
    order.request.kind = kind;
    Row all;
    all.name = fault + "/" + kind;
    if (kind == "none" || kind == "several") {
        all = runRow(order, all.name);
        wrong += wrongWith(all, options);
        return all;
    }
    for (const auto& [can, step] : whatCanHappen(order.request.oldSteps)) {
        if (row(can).name != kind || (!options.order.request.step.empty() && step != options.order.request.step))
            continue;
        order.request.step = step;
        const Row one = runRow(order, fault + "/" + kind + "/" + step);
        if (options.byStep) print(one, options);
        wrong += wrongWith(one, options);
        all.add(one);
    }
    return all;
}

} // namespace

int main(int count, char** words) {
    if (count == 2 && std::strcmp(words[1], "--kinds") == 0) {
        listKinds();
        return 0;
    }
    if (count == 2 && std::strcmp(words[1], "--faults") == 0) {
        for (const FaultRow& f : faultTable())
            std::printf("%-18s%s\n", std::string(f.name).c_str(), std::string(f.says).c_str());
        return 0;
    }
    const std::optional<Options> options = parseOptions(count, words);
    if (!options) {
        std::fputs(kUsage, stderr);
        return 2;
    }
    std::vector<std::string> kinds{options->order.request.kind};
    if (options->allKinds) {
        kinds = {"none", "several"};
        for (const KindRow& k : kKinds) kinds.emplace_back(k.name);
    }
    std::fputs(tableHead().c_str(), stdout);
    std::string wrong;
    Row total;
    total.name = "all";
    for (const FaultRow& fault : faultTable()) {
        if (!options->allFaults && fault.fault != options->order.request.fault) continue;
        for (const std::string& kind : kinds) {
            RowOrder order = options->order;
            order.request.fault = fault.fault;
            const Row one = kindRow(*options, order, kind, wrong);
            print(one, *options);
            total.add(one);
        }
    }
    std::fputs(tableRow(total).c_str(), stdout);
    if (!wrong.empty()) std::printf("\nWrong:\n%s", wrong.c_str());
    return 0;
}
