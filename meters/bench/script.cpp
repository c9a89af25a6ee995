// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/script.hpp"

#include "meters/bench/faults.hpp"
#include "meters/bench/script_keys.hpp"

#include <cmath>

namespace stillwire {
namespace {

using bench::Intermittent;
using bench::Keys;
using bench::Place;

void readSetup(KeyReader& reader, const TomlNode& root, bench::BenchSetup& s) {
    bench::Mechanics& m = s.mechanics;
    Keys(reader, reader.table(root, "sensor"))
        .number("track_ohm", s.track.ohm, 10)
        .number("end_top_ohm", s.track.endTop_ohm)
        .number("end_bottom_ohm", s.track.endBottom_ohm)
        .number("contact_ohm", s.track.contact_ohm)
        .number("contact_variation", s.track.contactVariation, 0, 1)
        .number("roughness_ohm", s.track.roughness_ohm)
        .numbers("levels_V", m.level_V, 0, 100)
        .numbers("shares", m.share, -10, 10)
        .number("mount_V", m.mount_V, -100, 100)
        .number("per_turn_V", m.perTurn_V, 1e-4, 10)
        .number("play_V", m.play_V, 0, 1)
        .number("lean_V", m.lean_V, -1, 1)
        .flag("lean_stays", m.leanStays)
        .number("tremor_V", m.tremor_V, 0, 1)
        .number("backlash_V", m.backlash_V, 0, 2)
        .number("hang_chance", m.hangChance, 0, 1)
        .number("hang_V", m.hang_V, 0, 5)
        .flag("hang_in_sensor", m.hangInSensor)
        .number("cold_shift_V", m.coldShift_V, -1, 1)
        .number("soak_s", m.soak_s, 1, 1e5)
        .done();
    double capacitance_nF = s.controller.capacitance_F * 1e9;
    enum class Bias { up, down, none } bias = Bias::down;
    Keys(reader, reader.table(root, "controller"))
        .number("bias_ohm", s.controller.bias_ohm, 100)
        .choice<Bias>("bias", {{"up", Bias::up}, {"down", Bias::down}, {"none", Bias::none}}, bias)
        .number("series_ohm", s.controller.series_ohm)
        .number("capacitance_nF", capacitance_nF, 0, 1e6)
        .done();
    s.controller.biasUp = bias == Bias::up;
    if (bias == Bias::none) s.controller.bias_ohm = 0;
    s.controller.capacitance_F = capacitance_nF * 1e-9;
    Keys(reader, reader.table(root, "reference"))
        .number("drop_V", s.reference.drop_V, -100, 100)
        .number("path_ohm", s.reference.path_ohm)
        .number("wander_V", s.reference.wander_V, 0, 100)
        .done();
    Keys(reader, reader.table(root, "ground"))
        .number("path_ohm", s.ground.path_ohm)
        .number("other_current_A", s.ground.otherCurrent_A, 0, 10)
        .done();
    Keys(reader, reader.table(root, "harness"))
        .number("ohm", s.harness_ohm)
        .number("supply_V", s.supply_V, 0, 60)
        .done();
    bench::MeterQuirks& q = s.meter;
    Keys(reader, reader.table(root, "meter_habits"))
        .number("input_ohm", q.input_ohm)
        .number("jitter_s", q.jitter_s, 0, 10)
        .number("latency_s", q.latency_s, 0, 10)
        .number("noise_counts", q.noise_counts, 0, 1000)
        .number("filter", q.filter, 0.01, 1)
        .number("blank_s", q.blank_s, 0, 60)
        .number("locked_range_V", q.lockedRange_V, 0, 1e4)
        .number("ripple_V", q.ripple_V, 0, 10)
        .number("mains_Hz", q.mains_Hz, 1, 1000)
        .number("accuracy_used", q.accuracyUsed, 0, 1)
        .done();
}

BenchFault readFault(KeyReader& reader, const TomlNode& node) {
    BenchFault out;
    out.line = node.line;
    constexpr double kUnset = -1e300;
    Keys keys(reader, &node);
    std::string cause;
    keys.text("kind", out.kind).text("cause", cause);
    if (!cause.empty()) out.cause = cause;
    if (!out.kind.empty() && !bench::faultByName(out.kind)) {
        reader.complain(&node, {"no fault is called '%1'", {out.kind}}, "see meters/bench/README.md for their names");
    }
    Place place{};
    keys.choice<Place>("place",
                       {{"wiper", Place::wiper},
                        {"signal-pin", Place::signalPin},
                        {"signal-wire", Place::signalWire},
                        {"reference-wire", Place::referenceWire},
                        {"ground-wire", Place::groundWire},
                        {"short-to-ground", Place::shortToGround},
                        {"short-to-supply", Place::shortToSupply}},
                       place);
    if (node.find("place") != nullptr) out.place = place;
    if (out.kind.empty() && !out.place) {
        reader.complain(&node, "a fault has neither kind nor place", "give kind = \"dirty-spot\", or a place");
    }
    int section = -1;
    keys.whole("section", section, 0, 99);
    if (section >= 0) out.section = section;
    enum class Side { left, either, right } side = Side::either;
    keys.choice<Side>("side", {{"left", Side::left}, {"either", Side::either}, {"right", Side::right}}, side);
    if (node.find("side") != nullptr) out.tuned.emplace_back(&Intermittent::side, static_cast<int>(side) - 1);
    const auto figure = [&](const char* key, double Intermittent::*member, double least, double most) {
        double value = kUnset;
        keys.number(key, value, least, most);
        if (value != kUnset) out.tuned.emplace_back(member, value);
    };
    figure("share", &Intermittent::share, -1, 1);
    figure("width", &Intermittent::width, 1e-3, 1);
    figure("idle_per_s", &Intermittent::idle_per_s, 0, 100);
    figure("shaft_per_s", &Intermittent::shaft_per_s, 0, 100);
    figure("harness_per_s", &Intermittent::harness_per_s, 0, 100);
    figure("motion_per_s", &Intermittent::motion_per_s, 0, 100);
    figure("warm", &Intermittent::warm, 0, 1);
    figure("wipes_to_clear", &Intermittent::wipesToClear, 0, 1e6);
    std::optional<std::pair<double, double>> ohm, duration_s;
    keys.pair("ohm", 1e-3, bench::kMostFigure, ohm).pair("duration_s", 1e-4, 1e4, duration_s);
    if (ohm) {
        out.tuned.emplace_back(&Intermittent::ohmMin, ohm->first);
        out.tuned.emplace_back(&Intermittent::ohmMax, ohm->second);
    }
    if (duration_s) {
        out.tuned.emplace_back(&Intermittent::durationMin_s, duration_s->first);
        out.tuned.emplace_back(&Intermittent::durationMax_s, duration_s->second);
    }
    keys.done();
    return out;
}

void readPlan(KeyReader& reader, const TomlNode& root, BenchScript& out) {
    BenchPlan& plan = out.plan;
    Keys keys(reader, reader.table(root, "plan"));
    std::vector<std::string> names;
    keys.texts("steps", names);
    const TomlNode* steps = keys ? keys.node().find("steps") : nullptr;
    if (steps != nullptr) plan.steps.clear();
    for (const std::string& name : names) {
        if (const auto step = stepByName(name))
            plan.steps.push_back(*step);
        else
            reader.complain(steps, {"no step is called '%1'", {name}}, "write a step's name, as in a mark");
    }
    std::vector<double> turns;
    keys.whole("shaft_poses", plan.shaftPoses, 0, 10000)
        .whole("harness_poses", plan.harnessPoses, 0, 10000)
        .whole("warm_poses", plan.warmPoses, 0, 10000)
        .whole("sections", plan.sections, 1, 99)
        .whole("releases", plan.releases, 0, 10000)
        .number("cold_start_s", plan.coldStart_s, 0, 1e5)
        .number("warm_wait_s", plan.warmWait_s, 0, 1e5)
        .number("pose_readings", plan.poseReadings, 0, 100)
        .numbers("turns", turns, -100, 100)
        .flag("marked", plan.marked)
        .done();
    for (const double turn : turns) plan.turns.push_back(static_cast<int>(std::lround(turn)));
    Keys(reader, reader.table(root, "hand"))
        .number("reaction_min_s", out.habits.reactionMin_s, 0, 10)
        .number("reaction_max_s", out.habits.reactionMax_s, 0, 10)
        .number("lead_move_s", out.habits.leadMove_s, 0.1, 60)
        .number("press_s", out.habits.press_s, 0.01, 60)
        .number("sweep_s", out.habits.sweep_s, 0.1, 600)
        .done();
}

} // namespace

Result<BenchScript> parseBenchScript(std::string_view toml, const std::string& where) {
    Result<TomlNode> parsed = parseToml(toml, where);
    if (!parsed) return parsed.error();
    const TomlNode& root = parsed.value();
    BenchScript out;
    KeyReader reader({where});
    int format = 1;
    Keys keys(reader, &root);
    keys.whole("format", format, 1, 1)
        .text("name", out.name)
        .text("notes", out.notes)
        .text("sheet", out.sheet)
        .text("meter", out.meter)
        .choice<ProbeSide>("probe",
                           {{"sensor-side", ProbeSide::sensorSide}, {"controller-side", ProbeSide::controllerSide}},
                           out.setup.side)
        .choice<BlackLead>(
            "black", {{"battery-negative", BlackLead::batteryNegative}, {"sensor-ground", BlackLead::sensorGround}},
            out.setup.black)
        .also({"started", "sensor", "controller", "reference", "ground", "harness", "meter_habits", "fault", "plan",
               "hand"})
        .done();
    if (const TomlNode* started = root.find("started")) {
        if (started->date() != nullptr)
            out.started = started->date()->text;
        else if (started->string() != nullptr)
            out.started = *started->string();
    }
    readSetup(reader, root, out.setup);
    if (const TomlArray* faults = reader.tables(root, "fault")) {
        for (const TomlNode& node : *faults) {
            out.faults.push_back(readFault(reader, node));
            // As addFault() will: whoever writes a header from the script alone must name the same side.
            if (out.faults.back().kind == bench::faultName(bench::FaultKind::harnessOpen))
                out.setup.side = ProbeSide::controllerSide;
        }
    }
    readPlan(reader, root, out);
    if (reader.failed()) return reader.error();
    if (out.name.empty()) out.name = where;
    return out;
}

} // namespace stillwire
