// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/meters/bench/signable.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace stillwire::test {
namespace {

// Poses and moments with an event that reached a reading by more than a limit.
struct Shown {
    std::set<std::size_t> poses;  // index of the pose's mark
    std::set<std::size_t> looked; // at: shown or not
    int loose = 0;                // outside poses
    [[nodiscard]] int count() const {
        return static_cast<int>(poses.size()) + loose;
    } // "One dropout, of whatever length, never decides; two in two poses do."
    [[nodiscard]] bool decides() const { return count() >= 2; }
    [[nodiscard]] bool answered(long wanted) const {
        return count() == 0 || (count() == 1 && loose == 0 &&
                                std::distance(looked.upper_bound(*poses.begin()), looked.end()) >= wanted);
    }
};
struct Counts {
    Shown shaft, held, moving;
    std::map<std::string, Shown> sections; // of the harness
    int shaftPoses = 0, heldPoses = 0;
    std::map<std::string, int> sectionPoses;

    // Where it showed most often: a fault of the harness lies in one section.
    [[nodiscard]] std::string worst() const {
        std::string name;
        double most = -1;
        for (const auto& [section, poses] : sectionPoses) {
            const auto shown = sections.find(section);
            const double rate = shown == sections.end() ? 0 : shown->second.count() / std::max(1.0, 1.0 * poses);
            if (rate > most) name = section;
            most = std::max(most, rate);
        }
        return name;
    }
    [[nodiscard]] int inHarness() const {
        int all = 0;
        for (const auto& [section, shown] : sections) all += shown.count();
        return all;
    }
};

// One way to read what reached the meter. A person reads it a little more, or a little less, strictly.
struct Lens {
    double limit_V = kTellable_V; // a deeper event shows
    double significant = 0.05;    // of the two-rate test
    std::size_t memory = 1;       // readings after an event that are one with it: none, the next, a filter's trail
    bool dark = false; // where the meter left its range, the level did; else that pose was not looked at at all
};

// Readings for which a display filter still shows what is over: two events nearer than that are shown as one.
std::size_t memoryOf(const bench::MeterQuirks& meter) {
    constexpr double kForgotten = 0.02;
    return meter.filter < 1 ? static_cast<std::size_t>(std::ceil(std::log(kForgotten) / std::log1p(-meter.filter)))
                            : 1;
}

// The pose marks whose readings were not all numbers.
std::set<std::size_t> darkPoses(const Capture& capture, Time aperture) {
    std::set<std::size_t> dark;
    std::size_t next = 0; // mark
    for (const Reading& reading : capture.readings) {
        while (next < capture.marks.size() && capture.marks[next].time <= reading.time - aperture) ++next;
        if (next > 0 && !reading.hasNumber()) dark.insert(next - 1);
    }
    return dark;
}

Counts countShown(const Simulation& run, const Lens& lens) {
    const Capture& capture = run.capture;
    const Time aperture = fromSeconds(capture.header.meter->aperture_s.value_or(capture.header.meter->interval_s));
    Counts counts;
    struct At {
        Time from{0};
        std::string step;
        bool pose = false;
        std::string section;
    };
    std::vector<At> places; // one a mark
    const std::set<std::size_t> dark = darkPoses(capture, aperture);
    for (const Mark& mark : capture.marks) {
        At at{mark.time, places.empty() ? "" : places.back().step, false, {}};
        if (const auto* opened = mark.as<StepMark>()) at.step = std::string(stepName(opened->step));
        if (mark.as<StepEndMark>()) at.step.clear();
        at.pose = mark.as<PoseMark>() != nullptr;
        if (at.pose) at.section = mark.as<PoseMark>()->place.area;
        const bool lookedAt = at.pose && (lens.dark || dark.count(places.size()) == 0);
        counts.shaftPoses += lookedAt && at.step == "wiggle-shaft";
        counts.heldPoses += lookedAt && at.step == "connector-held";
        if (at.pose && at.step == "wiggle-harness") counts.sectionPoses[at.section] += lookedAt;
        if (lookedAt && at.step == "wiggle-harness") counts.sections[at.section].looked.insert(places.size());
        if (lookedAt && at.step == "wiggle-shaft") counts.shaft.looked.insert(places.size());
        places.push_back(std::move(at));
    }
    const auto deep = [&](const TruthTouch& touch) {
        return std::abs(touch.depth_V) > lens.limit_V && (lens.dark || capture.readings[touch.reading].hasNumber());
    };
    std::size_t shownUpTo = 0; // reading of the last event, and the filter's memory
    for (const TruthEvent& event : run.truth.events) {
        const auto first = std::find_if(event.touched.begin(), event.touched.end(), deep);
        if (first == event.touched.end()) continue;
        const bool more = first->reading > shownUpTo || shownUpTo == 0;
        for (const TruthTouch& touch : event.touched)
            if (deep(touch)) shownUpTo = std::max(shownUpTo, touch.reading + lens.memory);
        // It belongs to the place in force when the aperture of its first reading began.
        const Time began = capture.readings[first->reading].time - aperture;
        std::size_t at = places.size();
        while (at > 0 && places[at - 1].from > began) --at;
        if (at == 0) continue;
        const At& place = places[at - 1];
        Shown* side = place.step == "wiggle-shaft"     ? &counts.shaft
                      : place.step == "connector-held" ? &counts.held
                      : place.step == "wiggle-harness" ? &counts.sections[place.section]
                      : place.step == "sweep" || place.step == "full-press" || place.step == "release"
                          ? &counts.moving
                          : nullptr;
        if (!side) continue;
        if (!more) continue;
        if (place.pose)
            side->poses.insert(at);
        else
            ++side->loose;
    }
    return counts;
}

// One-sided exact conditional test: k1 or more of k1+k2 events in n1 of n1+n2 poses, by adding up the binomial law.
double chanceOfSoMany(int k1, int n1, int k2, int n2) {
    const double share = static_cast<double>(n1) / (n1 + n2);
    const int n = k1 + k2;
    double sum = 0;
    for (int i = k1; i <= n; ++i)
        sum += std::exp(std::lgamma(n + 1.0) - std::lgamma(i + 1.0) - std::lgamma(n - i + 1.0) + i * std::log(share) +
                        (n - i) * std::log1p(-share));
    return sum;
}

// "As many further clean poses of that place as its step asks for": 29 of the shaft, 8 of a section.
bool harnessAnswered(const Counts& c) {
    return std::all_of(c.sections.begin(), c.sections.end(), [](const auto& one) { return one.second.answered(8); });
}
bool answered(const Counts& c) { return c.shaft.answered(29) && c.moving.count() == 0 && harnessAnswered(c); }

// Rows 3 to 10 of the judgement, on counts.
Decision byTheRows(const Counts& c, Decision standing, const Lens& lens) {
    const std::string section = c.worst();
    const auto found = c.sections.find(section);
    const Shown worst = found == c.sections.end() ? Shown{} : found->second;
    const int ks = c.shaft.count(), kh = worst.count(), all = c.inHarness();
    const int nh = c.sectionPoses.empty() ? 0 : c.sectionPoses.at(section);
    const auto sections = static_cast<double>(c.sectionPoses.size());
    // The worst of so many sections: Bonferroni.
    const bool harnessMore =
        kh > 0 && (ks == 0 || sections * chanceOfSoMany(kh, nh, ks, c.shaftPoses) < lens.significant);
    const bool shaftMore = ks > 0 && (all == 0 || chanceOfSoMany(ks, c.shaftPoses, kh, nh) < lens.significant);
    if (worst.decides() && harnessMore) return Decision::checkWiring;
    // With the connector held it would have shown at its own rate.
    const double hidden = std::pow(1 - static_cast<double>(ks) / std::max(ks, c.shaftPoses), c.heldPoses);
    if (c.shaft.decides() && c.heldPoses > 0 && c.held.count() == 0)
        return hidden <= lens.significant ? Decision::checkWiring : Decision::cannotTell;
    if (c.shaft.decides() && shaftMore) return Decision::replace;
    // One is none there: asked for again, and silent once as many clean ones have answered it.
    if (c.shaft.decides() && all > 0 && !worst.decides())
        return harnessAnswered(c) ? Decision::replace : Decision::cannotTell;
    if (ks > 0 && all > 0 && worst.decides()) return Decision::checkWiring;
    if (c.moving.decides() && all == 0) return Decision::replace; // the shaft turns, nothing else is touched
    if (standing != Decision::keep) return standing;
    return ks + all + c.moving.count() > 0 ? Decision::cannotTell : Decision::keep;
}

// Did some of an event fall into readings without a number: a range change, an overload?
bool wentDark(const Simulation& run) {
    return std::any_of(run.truth.events.begin(), run.truth.events.end(), [&](const TruthEvent& event) {
        return std::any_of(event.touched.begin(), event.touched.end(), [&](const TruthTouch& touch) {
            return std::abs(touch.depth_V) > kTellable_V && !run.capture.readings[touch.reading].hasNumber();
        });
    });
}

} // namespace

bool showed(const Simulation& run) {
    return std::any_of(run.truth.events.begin(), run.truth.events.end(), [](const TruthEvent& event) {
        return std::any_of(event.touched.begin(), event.touched.end(),
                           [](const TruthTouch& touch) { return std::abs(touch.depth_V) > kTellable_V; });
    });
}

Signable signable(const Simulation& run, const BenchScript& script, const Sheet& sheet) {
    // What stands still: supply, ground, releases, mount; a fault that comes and goes is left out.
    bench::BenchSetup still = prepare(script, sheet).value();
    const bool intermittent = !still.faults.empty();
    still.faults.clear();
    Truth standing;
    standing.hangs = run.truth.hangs;
    judgeTruth(standing, still, script.plan, sheet);

    Signable out;
    out.right = standing.verdict;
    // With the faults left out, the wiring is to blame for the ground alone.
    const bool supply = standing.verdict == Decision::checkSupply || standing.verdict == Decision::checkWiring;
    if (!supply && intermittent) {
        const auto as = [&](const Lens& lens) { return byTheRows(countShown(run, lens), standing.verdict, lens); };
        out.right = as({});
        // A dropout of half or of twice the depth may count as well, and a pose more or less turns a test that is
        // near its limit: then either is signable.
        for (const double limit_V : {0.5 * kTellable_V, kTellable_V, 2 * kTellable_V})
            for (const double significant : {0.02, 0.05, 0.15})
                for (const std::size_t memory : {std::size_t{0}, std::size_t{1}, memoryOf(still.meter)}) {
                    out.accepted.insert(as({limit_V, significant, memory, false}));
                    if (wentDark(run)) out.inTheDark.insert(as({limit_V, significant, memory, true}));
                }
        // One of its kind, and not again in as many as would have shown it, holds nothing back.
        if (out.right == Decision::cannotTell && standing.verdict == Decision::keep && answered(countShown(run, {})))
            out.accepted.insert(Decision::keep);
        // Who does not know what was in the dark may say so.
        if (wentDark(run)) out.inTheDark.insert(Decision::cannotTell);
    }
    // Replace only where somebody saw it hang on its stop; else the linkage first.
    const auto& marks = run.capture.marks;
    const bool seenOn =
        std::any_of(marks.begin(), marks.end(), [](const Mark& mark) { return mark.text() == "arm:on-stop"; });
    if (out.right == Decision::replace && run.truth.hangs > 1 && !seenOn) out.accepted.insert(Decision::checkLinkage);
    // One is none: it is asked for again, and holds nothing back once others have come back.
    if (out.right == Decision::keep && run.truth.hangs == 1) out.accepted.insert(Decision::cannotTell);
    out.accepted.insert(out.right);
    return out;
}

} // namespace stillwire::test
