// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/bench/event_differences.hpp"

#include "tests/meters/bench/signable.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace stillwire::test {
namespace {

constexpr std::size_t kListed = 5; // of each kind; the rest are counted

struct List {
    const char* title;
    std::string text{};
    std::size_t count = 0;

    void add(double at_s, const std::string& step, double depth_V) {
        if (++count > kListed) return;
        std::array<char, 160> line{};
        std::snprintf(line.data(), line.size(), "%s%.2f s %s %.3f V", count > 1 ? ", " : "", at_s,
                      step.empty() ? "no step" : step.c_str(), depth_V);
        text += line.data();
    }
    [[nodiscard]] std::string all() const {
        if (count == 0) return "";
        const std::string more = count > kListed ? " and " + std::to_string(count - kListed) + " more" : "";
        return std::string("; ") + title + ": " + text + more;
    }
};

// By the reading itself: whether it shows the event, or lies in the excursion.
bool covers(const Excursion& e, Time at) { return e.from <= at && at <= e.to; }

} // namespace

std::string differences(const Findings& findings, const Simulation& run) {
    const std::vector<Reading>& readings = run.capture.readings;
    List missed{"missed"}, invented{"invented"};
    for (const TruthEvent& event : run.truth.events) {
        double deepest_V = 0;
        bool covered = false;
        for (const TruthTouch& touch : event.touched) {
            if (!readings.at(touch.reading).hasNumber()) continue; // left dark by the meter
            if (std::abs(touch.depth_V) > std::abs(deepest_V)) deepest_V = touch.depth_V;
            const Time at = readings.at(touch.reading).time;
            covered = covered || std::any_of(findings.excursions.begin(), findings.excursions.end(),
                                             [&](const Excursion& e) { return covers(e, at); });
        }
        if (!covered && std::abs(deepest_V) > kTellable_V) missed.add(event.from_s, event.step, deepest_V);
    }
    for (const Excursion& e : findings.excursions) {
        const auto reaches = [&](const TruthEvent& event) {
            return std::any_of(event.touched.begin(), event.touched.end(),
                               [&](const TruthTouch& touch) { return covers(e, readings.at(touch.reading).time); });
        };
        if (std::any_of(run.truth.events.begin(), run.truth.events.end(), reaches)) continue;
        invented.add(toSeconds(e.from), e.step ? std::string(stepName(*e.step)) : "", e.extreme_V - e.held_V);
    }
    return missed.all() + invented.all();
}

} // namespace stillwire::test
