// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/options.hpp"

#include <algorithm>
#include <cstdlib>

namespace stillwire::hands {
namespace {

bool flag(const std::string& key, Options& options) {
    Request& request = options.order.request;
    if (key == "--by-step") return options.byStep = true;
    if (key == "--undecided") return options.undecided = true;
    if (key == "--old-steps") return request.oldSteps = true;
    if (key == "--quick-lead") return request.quickLead = true;
    if (key == "--without-act") return request.withoutAct = true;
    if (key != "--no-spare") return false;
    request.spare = false;
    return true;
}

bool kindNamed(const std::string& name, Options& options) {
    options.allKinds = name == "all";
    options.order.request.kind = name;
    return name == "all" || name == "none" || name == "several" ||
           std::any_of(kKinds.begin(), kKinds.end(), [&](const KindRow& k) { return k.name == name; });
}

bool faultNamed(const std::string& name, Options& options) {
    options.allFaults = name == "all";
    for (const FaultRow& f : faultTable()) {
        if (f.name != name) continue;
        options.order.request.fault = f.fault;
        return true;
    }
    return options.allFaults;
}

bool valued(const std::string& key, const std::string& value, Options& options) {
    const unsigned long long number = std::strtoull(value.c_str(), nullptr, 10);
    RowOrder& order = options.order;
    if (key == "--kind") return kindNamed(value, options);
    if (key == "--fault") return faultNamed(value, options);
    if (key == "--step") {
        order.request.step = value;
    } else if (key == "--seeds") {
        order.seeds = static_cast<int>(number);
    } else if (key == "--seed") {
        order.request.seed = number;
    } else if (key == "--list") {
        options.list = static_cast<std::size_t>(number);
    } else if (key == "--jobs") {
        order.jobs = static_cast<int>(number);
    } else if (key == "--dump") {
        order.dumpTo = value;
    } else {
        return false;
    }
    return true;
}

} // namespace

std::optional<Options> parseOptions(int count, char** words) {
    Options options;
    bool seedGiven = false, seedsGiven = false;
    for (int i = 1; i < count; ++i) {
        const std::string key = words[i];
        if (flag(key, options)) continue;
        if (i + 1 >= count || !valued(key, words[++i], options)) return std::nullopt;
        seedGiven = seedGiven || key == "--seed";
        seedsGiven = seedsGiven || key == "--seeds";
    }
    // One seed named is one run wanted.
    if (seedGiven && !seedsGiven) options.order.seeds = 1;
    return options;
}

} // namespace stillwire::hands
