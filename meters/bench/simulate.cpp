// SPDX-License-Identifier: GPL-3.0-or-later
// Plays a plan of steps on the rig, faster than real time, and makes the marks the procedure would make.
#include "meters/bench/simulate.hpp"

#include "meters/bench/faults.hpp"
#include "meters/bench/stage.hpp"

#include <algorithm>
#include <functional>

namespace stillwire {
namespace {

Side sideOf(int pose) { return pose % 2 == 0 ? Side::left : Side::right; }

class Player {
public:
    Player(const BenchScript& script, const bench::BenchSetup& setup, const Sheet& sheet, const MeterTraits& meter,
           std::uint64_t seed)
        : plan_(script.plan), sheet_(sheet), rest_(bench::restIndex(sheet)),
          stage_(setup, script.habits, sheet, meter, seed), rig_(stage_.rig()), hand_(stage_.hand()), pace_(seed, 5),
          interval_s_(rig_.meter().interval_s()),
          settle_s_((setup.meter.filter < 1 ? 12 : 9) * interval_s_), // a display filter creeps on
          dark_s_(meter.ranges.size() > 1 && setup.meter.lockedRange_V <= 0 ? setup.meter.blank_s : 0),
          hangs_(setup.mechanics.hangChance > 0), hangInSensor_(setup.mechanics.hangInSensor) {}

    void play();
    Capture take() { return std::move(capture_); }
    [[nodiscard]] Truth truth() const { return stage_.truth(plan_); }

private:
    void wait(double length_s);
    void mark(MarkContent content);
    void step(Step step);
    void lead(Wire wire);
    [[nodiscard]] bool shaftShowed() const;
    void poses(int count, const std::function<PosePlace(int)>& place);
    void shaftPoses(int count);
    void harnessPoses(int count);
    void leadPoses();
    // Stays until a settled level was shown, and the dark of a range change on the way.
    void visit(const std::string& name, double stay_s) {
        mark(PositionMark{name});
        wait(std::max(stay_s, settle_s_) + dark_s_);
    }
    void pressAll(double press_s, double rest_s);
    void releases();

    const BenchPlan& plan_;
    const Sheet& sheet_;
    std::size_t rest_;
    bench::Stage stage_;
    bench::Rig& rig_;
    bench::Hand& hand_;
    bench::Random pace_;
    double interval_s_, settle_s_, dark_s_;
    bool hangs_, hangInSensor_;
    std::vector<Reading> fresh_;
    Capture capture_;
};

void Player::wait(double length_s) {
    stage_.advanceTo(rig_.now_s() + length_s, fresh_);
    for (const Reading& reading : fresh_) {
        capture_.rows.push_back({false, capture_.readings.size()});
        capture_.readings.push_back(reading);
    }
    fresh_.clear();
}

void Player::mark(MarkContent content) {
    const Mark mark{fromSeconds(rig_.now_s()), std::move(content)};
    hand_.heed(mark);
    if (!plan_.marked) return;
    capture_.rows.push_back({true, capture_.marks.size()});
    capture_.marks.push_back(mark);
}

void Player::lead(Wire wire) {
    if (rig_.probed() == wire) return;
    mark(StepEndMark{});
    wait(hand_.reach(wire) - rig_.now_s() + 0.5);
}

void Player::poses(int count, const std::function<PosePlace(int)>& place) {
    for (int i = 0; i < count; ++i) {
        mark(PoseMark{place(i)});
        wait((plan_.poseReadings + pace_.uniform()) * interval_s_);
    }
    // The hand lets go before the next step begins: what the shaft does late would count for the harness.
    mark(StepEndMark{});
    wait(std::max(1.0, 2 * interval_s_));
}

void Player::shaftPoses(int count) {
    poses(count, [](int i) { return PosePlace::at(sideOf(i)); });
}

void Player::harnessPoses(int count) {
    const int sections = std::max(plan_.sections, 1);
    const int each = std::max((count + sections - 1) / sections, 1);
    poses(count, [&](int i) { return PosePlace::at(sideOf(i), std::min(i / each, sections - 1) + 1); });
}

void Player::leadPoses() {
    poses(10, [](int i) { return PosePlace{i < 5 ? "red-lead" : "black-lead", PosePlace::at(sideOf(i)).way}; });
}

// Did a reading show what came and went while the shaft was pushed, as far as it was?
bool Player::shaftShowed() const {
    if (std::find(plan_.steps.begin(), plan_.steps.end(), Step::wiggleShaft) == plan_.steps.end()) return true;
    return std::any_of(rig_.events().begin(), rig_.events().end(), [](const TruthEvent& event) {
        return event.step == stepName(Step::wiggleShaft) && !event.touched.empty();
    });
}

void Player::pressAll(double press_s, double rest_s) {
    for (std::size_t i = 0; i < sheet_.positions.size(); ++i) {
        if (i == rest_) continue;
        visit(sheet_.positions[i].name, press_s);
        visit(sheet_.positions[rest_].name, rest_s);
    }
}

void Player::releases() {
    const std::string& away = sheet_.positions[rest_ == 0 ? sheet_.positions.size() - 1 : 0].name;
    const std::string& home = sheet_.positions[rest_].name;
    int done = 0;
    const auto once = [&] {
        visit(away, pace_.uniform(2.5, 3.5));
        visit(home, pace_.uniform(3.0, 4.0));
        ++done;
    };
    while (done < plan_.releases) once();
    // Whoever is to look whether the arm is on its stop looks while the reading hangs.
    const bool asked = std::find(plan_.steps.begin(), plan_.steps.end(), Step::lift) != plan_.steps.end();
    while (hangs_ && asked && !rig_.hanging() && done < plan_.releases + 8) once();
}

void Player::step(Step step) {
    if (step == Step::connectorHeld && !shaftShowed()) return; // a led run comes to it after a dropout
    const double look_s = std::max(4.0, settle_s_);
    if (step != Step::hookUp) lead(traits(step).wire); // connecting: the lead stays where it is
    if (traits(step).warmth == Warmth::warm) {
        mark(StepEndMark{});
        wait(plan_.warmWait_s);
    }
    mark(StepMark{step});
    const std::string& home = sheet_.positions[rest_].name;
    switch (step) {
    case Step::hookUp: wait(3); break;
    case Step::reference:
    case Step::ground: wait(look_s); break;
    case Step::coldStart: wait(plan_.coldStart_s); break;
    case Step::wiggleShaft: shaftPoses(plan_.shaftPoses); break;
    case Step::wiggleHarness: harnessPoses(plan_.harnessPoses); break;
    case Step::leadCheck: leadPoses(); break;
    case Step::connectorHeld: shaftPoses(plan_.shaftPoses); break;
    case Step::wiggleReference:
    case Step::wiggleGround: shaftPoses(12); break;
    case Step::fullPress:
        wait(1);
        for (int round = 0; round < 2; ++round) pressAll(6, 4); // one visit is none
        break;
    case Step::sweep: wait(hand_.sweepTakes_s() + 2); break;
    case Step::release: releases(); break;
    case Step::lift: {
        wait(1.5);
        mark(ArmMark{rig_.hanging() && !hangInSensor_ ? Arm::offStop : Arm::onStop});
        wait(4);
        break;
    }
    case Step::warmRepeat: shaftPoses(plan_.warmPoses); break;
    case Step::adjust:
        for (const int turns : plan_.turns) {
            mark(TurnMark{static_cast<double>(turns)});
            wait(1.5 + look_s);
        }
        break;
    case Step::confirm:
        visit(home, 4);
        pressAll(5, 4);
        break;
    case Step::putBack: wait(3); break;
    }
}

void Player::play() {
    rig_.probe(Wire::signal);
    wait(0.2);
    mark(KeyMark{true});
    for (const Step next : plan_.steps) step(next);
    mark(StepEndMark{});
    wait(1);
    mark(KeyMark{false});
}

} // namespace

Result<bench::BenchSetup> prepare(const BenchScript& script, const Sheet& sheet) {
    const auto broken = [&](Sentence what, Sentence mend) {
        return Error{Error::Kind::badInput, script.name, 0, std::move(what), std::move(mend)};
    };
    if (sheet.positions.size() < 2) return broken("the sheet has fewer than two positions", "give both ends");
    bench::BenchSetup setup = script.setup;
    setup.nominal_V = sheet.nominal_V;
    if (setup.mechanics.level_V.empty()) {
        for (const Position& position : sheet.positions) setup.mechanics.level_V.push_back(position.aim_V);
    }
    if (setup.mechanics.level_V.size() != sheet.positions.size()) {
        return broken({"levels for %1 positions, the sheet has %2",
                       {std::to_string(setup.mechanics.level_V.size()), std::to_string(sheet.positions.size())}},
                      "give one level for each");
    }
    for (const BenchFault& fault : script.faults) {
        bench::Intermittent* made = nullptr;
        if (fault.kind.empty()) {
            made = &setup.faults.emplace_back();
            made->place = fault.place.value_or(bench::Place::wiper);
            made->cause = "fault " + std::to_string(setup.faults.size());
        } else {
            const auto kind = bench::faultByName(fault.kind);
            if (!kind) {
                return broken({"no fault is called '%1'", {fault.kind}},
                              "see meters/bench/README.md for their names");
            }
            made = bench::addFault(setup, *kind, sheet);
        }
        if (made == nullptr) continue;
        if (fault.place) made->place = *fault.place;
        if (fault.cause) made->cause = *fault.cause;
        if (fault.section) made->section = *fault.section;
        for (const auto& [member, value] : fault.tuned) made->*member = value;
    }
    return setup;
}

Result<Simulation> simulate(const BenchScript& script, const Sheet& sheet, const MeterTraits& meter,
                            std::uint64_t seed) {
    const Result<bench::BenchSetup> setup = prepare(script, sheet);
    if (!setup) return setup.error();
    Player player(script, setup.value(), sheet, meter, seed);
    player.play();

    Simulation out;
    out.truth = player.truth();
    out.capture = player.take();
    out.capture.header.started = script.started;
    out.capture.header.notes = script.notes;
    out.capture.header.probe = setup.value().side;
    out.capture.header.black = setup.value().black;
    for (int section = 1; section <= script.plan.sections; ++section)
        out.capture.header.sections.push_back("section-" + std::to_string(section));
    out.capture.header.sheet = sheet;
    out.capture.header.meter = meter;
    out.capture.summary.rows = out.capture.rows.size();
    return out;
}

} // namespace stillwire
