// SPDX-License-Identifier: GPL-3.0-or-later
// A scripted person and wire for the procedure: whatever the prompt asks for is done, and findings say so in the
// shape the examination gives them. It checks the order and the marks, not the judgement.
#pragma once

#include "core/procedure/procedure.hpp"

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace stillwire::testing {

inline WireLevel settledWire(double level_V, double u_V, bool inside) {
    WireLevel wire;
    wire.level_V = wire.lowest_V = wire.highest_V = wire.lowestVisit_V = wire.highestVisit_V = wire.worst_V = level_V;
    wire.u_V = u_V;
    wire.visits = 1;
    wire.probabilityInside = inside ? 1 : 0;
    wire.conformance = inside ? Conformance::inside : Conformance::outside;
    return wire;
}

struct Driver {
    static constexpr int kPosesOfASection = 8;
    Sheet sheet;
    MeterTraits meter;
    std::map<std::string, double> level_V; // what the signal shows at each position
    double reference_V = 5.0, ground_V = 0.02;
    bool keyOn = true, leadFollows = true;
    int dropoutsInShaft = 0;
    bool cannotSee = false;
    Time now{0};
    Findings findings;
    Procedure procedure;
    std::vector<Mark> marks;
    std::string step, position; // in force
    Time since{0}, sweepSince{0};
    std::size_t readings = 0;

    Driver(Sheet s, std::map<std::string, double> levels, ProcedureOptions options = {})
        : sheet(std::move(s)), level_V(std::move(levels)), procedure(sheet, meter, std::move(options)) {
        meter.interval_s = 0.3;
        findings.meter.interval_s = 0.3;
        findings.meter.resolution_V = 0.001;
        for (const Position& p : sheet.positions)
            findings.positions.push_back({p.name, p.window, {}, {}, {}, {}, {}, {}, {}, {}});
        take(procedure.start(now));
    }

    void take(const std::vector<Mark>& made) {
        for (const Mark& m : made) {
            marks.push_back(m);
            const std::string_view text = m.text();
            if (text.starts_with("step:")) step = text.substr(5);
            if (text == "step:sweep") sweepSince = m.time;
            if (text.starts_with("position:")) {
                position = text.substr(9);
                since = m.time;
                readings = 0;
            }
            if (m.as<PoseMark>()) pose(*stepByName(step), m.as<PoseMark>()->place);
        }
    }

    StepCoverage& coverage(Step s, const std::string& section) {
        for (StepCoverage& c : findings.steps)
            if (c.step == s && c.section == section) return c;
        StepCoverage& added = findings.steps.emplace_back();
        added.step = s;
        added.section = section;
        if (!section.empty()) added.posesFor95 = kPosesOfASection;
        return added;
    }
    void pose(Step s, const PosePlace& place) {
        count(coverage(s, ""), 29);
        if (s != Step::wiggleHarness) return;
        const std::vector<std::string> names = usualSections();
        int wanted = 0;
        for (std::size_t i = 0; i < names.size(); ++i) {
            StepCoverage& section = coverage(s, names[i]);
            if (place.isSection(names[i], i + 1)) count(section, kPosesOfASection);
            wanted += section.posesFor95.value_or(0);
        }
        if (!cannotSee) coverage(s, "").posesFor95 = wanted;
    }
    void count(StepCoverage& c, int wanted) const {
        ++c.poses;
        if (c.step == Step::wiggleShaft) c.dropouts = std::min(c.poses, dropoutsInShaft);
        if (cannotSee)
            c.posesFor95.reset();
        else
            c.posesFor95 = std::max(0, wanted - c.poses);
    }

    [[nodiscard]] double wire() const {
        if (!keyOn) return 0;
        const Wire w = procedure.prompt().wire;
        if (w == Wire::reference) return reference_V;
        if (w == Wire::ground) return ground_V;
        if (step == "sweep") return sweep();
        const auto at = level_V.find(position.empty() ? sheet.rest().name : position);
        return at != level_V.end() ? at->second : 0;
    }

    // Out to each working position and back in a triangle of 20 s each way, one after the other.
    [[nodiscard]] double sweep() const {
        const double rest = level_V.at(sheet.rest().name), phase = toSeconds(now - sweepSince) / 40;
        std::vector<double> ends;
        for (const Position& p : sheet.positions)
            if (!p.rest) ends.push_back(level_V.at(p.name));
        const auto leg = static_cast<std::size_t>(phase);
        if (leg >= ends.size()) return rest;
        const double within = phase - static_cast<double>(leg);
        return rest + (ends[leg] - rest) * (within < 0.5 ? 2 * within : 2 - 2 * within);
    }

    // One reading, then a tick, as the session does.
    void read() {
        now += Time(300'000);
        ++findings.readings;
        ++readings;
        findings.duration = now;
        findings.state = WireState::steady;
        if (leadFollows || !procedure.prompt().movingLead) findings.meter.held_V = wire();
        if (step == "reference")
            findings.reference = settledWire(reference_V, 0.01, sheet.reference.contains(reference_V));
        if (step == "ground") findings.ground = settledWire(ground_V, 0.002, ground_V <= sheet.maxDrop_V);
        stay();
        findings.overVoltage = findings.meter.held_V > 5.5;
        take(procedure.tick(now, findings));
    }

    void stay() {
        for (PositionLevel& p : findings.positions) {
            if (p.name != position || step == "reference" || step == "ground") continue;
            if (readings == 2)
                p.visits.push_back({now, now, wire(), wire(), 0.01, 0, false, stepByName(step), std::nullopt});
            if (readings >= 2) p.visits.back().readings = static_cast<int>(readings) - 1;
            if (readings >= 2) p.raw_V = p.level_V = wire();
        }
    }

    void press(Command command) { take(procedure.command(command, now, findings)); }

    // Reads until the prompt is in `until` (or over) or `limit_s` have passed; true if it got there.
    bool readUntil(Step until, double limit_s = 3600) {
        const Time end = now + fromSeconds(limit_s);
        while (now < end && !procedure.prompt().finished && procedure.prompt().step != until) read();
        return procedure.prompt().step == until;
    }
    bool readToTheEnd(double limit_s = 7200) {
        const Time end = now + fromSeconds(limit_s);
        while (now < end && !procedure.prompt().finished) read();
        return procedure.prompt().finished;
    }

    [[nodiscard]] int count(std::string_view prefix) const {
        int n = 0;
        for (const Mark& m : marks) n += std::string_view(m.text()).starts_with(prefix) ? 1 : 0;
        return n;
    }
    [[nodiscard]] std::vector<std::string> texts(std::string_view prefix) const {
        std::vector<std::string> out;
        for (const Mark& m : marks)
            if (std::string_view(m.text()).starts_with(prefix)) out.push_back(m.text());
        return out;
    }
};

inline Sheet pedalSheet() {
    Sheet s;
    s.name = "Resurfacer drive pedal";
    s.positions = {{"released", {0.70, 0.95}, 0.82, true}, {"pressed", {3.90, 4.30}, 4.10, false}};
    s.driftAllowance_V = 0.05;
    return s;
}
inline const std::map<std::string, double> kPedal{{"released", 0.82}, {"pressed", 4.1}}; // a good one

inline Sheet twoWaySheet() {
    Sheet s;
    s.name = "Trolley two-way lever";
    s.positions = {
        {"back", {0.4, 0.8}, 0.6, false}, {"middle", {2.3, 2.7}, 2.5, true}, {"forward", {4.2, 4.6}, 4.4, false}};
    return s;
}

} // namespace stillwire::testing
