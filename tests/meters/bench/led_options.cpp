// SPDX-License-Identifier: GPL-3.0-or-later
// Reading the words of the command line.
#include "tests/meters/bench/led_options.hpp"

#include <charconv>
#include <string_view>
#include <vector>

namespace stillwire::led {
namespace {

using Fault = std::optional<bench::FaultKind>; // none: good

template <class Number> bool read(std::string_view word, Number& out) {
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), out);
    return error == std::errc() && end == word.data() + word.size();
}

std::vector<Fault> faultsNamed(std::string_view name) {
    std::vector<Fault> out;
    if (name == "good" || name == "all") out.emplace_back(std::nullopt);
    for (int i = 0; i < bench::kFaultKinds; ++i) {
        const auto kind = static_cast<bench::FaultKind>(i);
        if (name == "all" || name == faultName(kind)) out.emplace_back(kind);
    }
    return out;
}

std::vector<test::MeterKind> metersNamed(std::string_view name) {
    std::vector<test::MeterKind> out;
    for (const test::MeterKind kind : test::kMeterKinds)
        if (name == "all" || name == meterName(kind)) out.push_back(kind);
    return out;
}

struct Asked {
    std::vector<Fault> faults = faultsNamed("all");
    std::vector<test::MeterKind> meters = metersNamed("all");
    std::uint64_t first = 1, seeds = 5;

    [[nodiscard]] std::vector<Subject> subjects() const {
        std::vector<Subject> out;
        for (const Fault& fault : faults)
            for (const test::MeterKind meter : meters)
                for (std::uint64_t i = 0; i < seeds; ++i) out.push_back({fault, meter, first + i});
        return out;
    }
};

bool valued(std::string_view key, std::string_view value, Asked& asked, Options& options) {
    if (key == "--seeds") return read(value, asked.seeds) && asked.seeds > 0;
    if (key == "--seed") return read(value, asked.first);
    if (key == "--jobs") return read(value, options.jobs) && options.jobs > 0;
    if (key == "--at-most-wrong") return read(value, options.atMostWrong.emplace());
    if (key == "--fault") return !(asked.faults = faultsNamed(value)).empty();
    if (key == "--meter") return !(asked.meters = metersNamed(value)).empty();
    return false;
}

} // namespace

std::optional<Options> parseOptions(int count, char** words) {
    Options options;
    Asked asked;
    for (int i = 1; i < count; ++i) {
        const std::string_view key = words[i];
        if (key == "--misses") {
            options.misses = true;
        } else if (i + 1 >= count || !valued(key, words[++i], asked, options)) {
            return std::nullopt;
        }
    }
    options.subjects = asked.subjects();
    return options;
}

} // namespace stillwire::led
