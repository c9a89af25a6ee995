// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/make_run.hpp"

#include "tests/hands/capture_text.hpp"
#include "tests/hands/levels.hpp"
#include "tests/hands/take_readings.hpp"
#include "tests/hands/text.hpp"

#include <algorithm>
#include <set>

namespace stillwire::hands {
namespace {

// Steps that a run without a dropout has no need of.
bool isExtra(const std::string& step) {
    return step == "connector-held" || step == "wiggle-reference" || step == "wiggle-ground";
}

Subject subjectOf(const Request& request, Dice& dice) {
    Subject subject;
    subject.meter = anyMeter(dice);
    // A fall into another range would blind the meter, and then nothing were certain to be seen: the range is locked.
    const bool comesAndGoes =
        request.fault == Fault::shaft || request.fault == Fault::harness || request.fault == Fault::connector;
    if (comesAndGoes) subject.meter.ranges.erase(subject.meter.ranges.begin(), subject.meter.ranges.end() - 1);
    const double doubt = doubt_V(subject.meter);
    subject.machine = anyMachine(dice, doubt + 0.01);
    subject.fault = request.fault;
    subject.levels_V = request.fault == Fault::adjust ? turnedLevels(subject.machine, doubt, dice)
                       : request.fault == Fault::span ? shortLevels(subject.machine, doubt, dice)
                                                      : goodLevels(subject.machine, doubt, dice);
    subject.oldSteps = request.oldSteps;
    subject.spare = request.spare;
    subject.quickLead = request.quickLead;
    subject.extraSteps = dice.chance(0.3) || isExtra(request.step) || request.fault == Fault::referenceDrops;
    return subject;
}

std::vector<Order> ordersFor(const Request& request, const Occasions& occasions, Dice& dice) {
    std::vector<std::pair<std::pair<Kind, std::string>, int>> fitting;
    for (const auto& entry : occasions) {
        const bool fits = request.kind == "several" || row(entry.first.first).name == request.kind;
        if (fits && (request.step.empty() || entry.first.second == request.step)) fitting.push_back(entry);
    }
    std::vector<Order> orders;
    std::set<std::string> steps;
    const std::size_t wanted = request.kind == "several" ? 3 : 1;
    for (int tries = 0; tries < 100 && !fitting.empty() && orders.size() < wanted; ++tries) {
        const auto& [what, count] =
            fitting[static_cast<std::size_t>(dice.whole(0, static_cast<int>(fitting.size()) - 1))];
        // One a step, so that each stays what it is.
        if (!steps.insert(what.second).second) continue;
        orders.push_back({what.first, what.second, dice.whole(0, count - 1)});
    }
    return orders;
}

std::vector<Mark> marksOf(const Scene& scene) {
    std::vector<Mark> marks;
    for (const Note& note : scene.marks) marks.emplace_back(fromSeconds(note.at_s), note.text);
    return marks;
}

} // namespace

std::string nameOf(const Request& r) {
    return text("%s-%s-%s-%llu", std::string(row(r.fault).name).c_str(), r.kind.c_str(),
                r.step.empty() ? "any" : r.step.c_str(), static_cast<unsigned long long>(r.seed));
}

std::optional<LedRun> makeRun(const Request& request) {
    // A run has nothing in common with that of another kind, step or fault of one seed.
    const std::string family = request.kind + "/" + request.step + "/" + std::string(row(request.fault).name);
    Dice dice(family, request.seed);
    const Dice hand(family + "/hand", request.seed);
    Dice chance(family + "/chance", request.seed);
    LedRun run;
    run.request = request;
    run.subject = subjectOf(request, dice);
    const bool acts = request.kind != "none";
    std::vector<Order> orders;
    const auto decide = [&] {
        Orders counted;
        LedHand counting(run.subject, counted, hand, chance);
        counting.run();
        orders = ordersFor(request, counted.occasions(), chance);
    };
    if (acts) decide();
    // Some things happen only in the steps that follow a first dropout.
    if (acts && orders.empty()) {
        run.subject.extraSteps = true;
        decide();
    }
    if (acts && orders.empty()) return std::nullopt;
    if (request.withoutAct) orders.clear();
    run.subject.again = request.again;
    Orders given(std::move(orders));
    LedHand led(run.subject, given, hand, chance);
    led.run();
    run.acts = led.acts;
    run.faultTimes = led.faultTimes;
    run.scene = led.scene;
    run.marks = marksOf(led.scene);
    run.readings = takeReadings(led.scene, run.subject.meter, dice);
    run.capture = captureText(run);
    return run;
}

std::vector<std::pair<Kind, std::string>> whatCanHappen(bool oldSteps) {
    std::set<std::pair<Kind, std::string>> all;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        Request request;
        request.seed = seed;
        request.oldSteps = oldSteps;
        Dice dice("occasions", seed);
        Subject subject = subjectOf(request, dice);
        subject.extraSteps = true;
        Orders counted;
        LedHand led(subject, counted, dice, dice);
        led.run();
        for (const auto& [what, count] : counted.occasions()) all.insert(what);
    }
    return {all.begin(), all.end()};
}

std::string truthToml(const LedRun& run) {
    std::string toml = text("seed = %llu\nmeter = \"%s\"\nmachine = \"%s\"\nfault = \"%s\"\n",
                            static_cast<unsigned long long>(run.request.seed), run.subject.meter.words().c_str(),
                            run.subject.machine.name.c_str(), std::string(row(run.subject.fault).name).c_str());
    toml += text("reference_V = %.4f\nground_V = %.4f\nright = [", run.scene.reference_V, run.scene.ground_V);
    for (const Decision d : row(run.subject.fault).right) toml += text("\"%s\", ", decisionName(d));
    toml += "]\n[levels_V]\n";
    for (std::size_t i = 0; i < run.subject.levels_V.size(); ++i)
        toml += text("%s = %.4f\n", run.subject.machine.places[i].name.c_str(), run.subject.levels_V[i]);
    for (const Span& s : run.faultTimes)
        toml += text("[[fault_shows]]\nfrom_s = %.3f\nto_s = %.3f\n", s.from_s, s.to_s);
    for (const Act& a : run.acts)
        toml += text("[[act]]\nkind = \"%s\"\nlikely = \"%s\"\nstep = \"%s\"\nfrom_s = %.3f\nto_s = %.3f\n"
                     "depth_V = %.3f\n",
                     std::string(row(a.kind).name).c_str(), std::string(row(a.kind).likely).c_str(), a.step.c_str(),
                     a.from_s, a.to_s, a.depth_V);
    return toml;
}

} // namespace stillwire::hands
