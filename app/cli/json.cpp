// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/json.hpp"

#include "app/cli/names.hpp"

#include <cmath>
#include <optional>

#include <nlohmann/json.hpp>

namespace stillwire {

namespace {

using Json = nlohmann::ordered_json;

Json number(double v) { return std::isfinite(v) ? Json(v) : Json(nullptr); }

template <class T> Json orNull(const std::optional<T>& v) {
    if (!v) return nullptr;
    if constexpr (std::is_floating_point_v<T>)
        return number(*v);
    else
        return *v;
}

Json texts(const std::vector<Sentence>& sentences) {
    Json out = Json::array();
    for (const Sentence& s : sentences) out.push_back(s.english());
    return out;
}

Json excursion(const Excursion& e) {
    Json out;
    out["from_s"] = toSeconds(e.from);
    out["to_s"] = toSeconds(e.to);
    out["held_V"] = number(e.held_V);
    out["extreme_V"] = number(e.extreme_V);
    out["direction"] = nameOf(e.direction);
    out["kind"] = nameOf(e.kind);
    out["readings"] = e.readings;
    out["step"] = e.step ? Json(stepName(*e.step)) : Json(nullptr);
    out["pose"] = e.pose.empty() ? Json(nullptr) : Json(e.pose.text());
    out["threshold_V"] = number(e.threshold_V);
    out["open"] = e.open;
    out["with_reference"] = e.withReference;
    return out;
}

Json referenceMoves(const Findings& f) {
    Json out = Json::array();
    for (const Excursion& e : f.referenceMoves) out.push_back(excursion(e));
    return out;
}

Json excursions(const Findings& f, ExcursionKind kind) {
    Json out = Json::array();
    for (const Excursion& e : f.excursions)
        if (e.kind == kind) out.push_back(excursion(e));
    return out;
}

Json blind(const std::vector<BlindSpan>& spans) {
    Json out = Json::array();
    for (const BlindSpan& b : spans)
        out.push_back({{"from_s", toSeconds(b.from)}, {"to_s", toSeconds(b.to)}, {"cause", nameOf(b.cause)}});
    return out;
}

Json phases(const Findings& f) {
    Json out = Json::array();
    for (const Phase& p : f.phases)
        out.push_back({{"kind", nameOf(p.kind)},
                       {"from_s", toSeconds(p.from)},
                       {"to_s", toSeconds(p.to)},
                       {"level_V", orNull(p.level_V)},
                       {"noise_V", orNull(p.noise_V)}});
    return out;
}

Json jumps(const Findings& f) {
    Json out = Json::array();
    for (const LevelJump& j : f.jumps)
        out.push_back({{"at_s", toSeconds(j.at)},
                       {"from_V", number(j.from_V)},
                       {"to_V", number(j.to_V)},
                       {"step", j.step ? Json(stepName(*j.step)) : Json(nullptr)}});
    return out;
}

Json aside(const Findings& f) {
    Json out = Json::array();
    for (const Aside& a : f.aside)
        out.push_back({{"from_s", toSeconds(a.from)},
                       {"to_s", toSeconds(a.to)},
                       {"from_V", number(a.from_V)},
                       {"to_V", number(a.to_V)},
                       {"step", a.step ? Json(stepName(*a.step)) : Json(nullptr)},
                       {"likely", nameOf(a.likely)}});
    return out;
}

Json plateaus(const Findings& f) {
    Json out = Json::array();
    for (const Stay& s : f.plateaus)
        out.push_back({{"from_s", toSeconds(s.from)},
                       {"to_s", toSeconds(s.to)},
                       {"raw_V", number(s.level_V)},
                       {"noise_V", number(s.noise_V)},
                       {"windows", s.windows}});
    return out;
}

Json positions(const Findings& f) {
    Json out = Json::array();
    for (const PositionLevel& p : f.positions) {
        Json one;
        one["name"] = p.name;
        one["level_V"] = orNull(p.level_V);
        one["raw_V"] = orNull(p.raw_V);
        one["u_V"] = orNull(p.u_V);
        one["window_V"] = {p.window_V.min_V, p.window_V.max_V};
        one["probability_inside"] = orNull(p.probabilityInside);
        one["conformance"] = p.conformance ? Json(nameOf(*p.conformance)) : Json(nullptr);
        one["cold_level_V"] = orNull(p.coldLevel_V);
        one["spread_V"] = orNull(p.spread_V);
        one["visits"] = p.visits.size();
        out.push_back(one);
    }
    return out;
}

Json wire(const std::optional<WireLevel>& w) {
    if (!w) return nullptr;
    return {{"level_V", number(w->level_V)},
            {"u_V", number(w->u_V)},
            {"lowest_V", number(w->lowest_V)},
            {"highest_V", number(w->highest_V)},
            {"change_V", number(w->change_V)},
            {"visits", w->visits},
            {"probability_inside", number(w->probabilityInside)},
            {"conformance", nameOf(w->conformance)}};
}

void coverage(Json& out, const StepCoverage& c) {
    out["poses"] = c.poses;
    out["dropouts"] = c.dropouts;
    out["rate_upper_95"] = orNull(c.rateUpper95);
    out["poses_for_95"] = orNull(c.posesFor95);
    out["shortest_visible_s"] = orNull(c.shortestVisible_s);
}

Json wiggle(const Findings& f) {
    Json out;
    coverage(out, f.wiggle);
    out["step"] = stepName(f.wiggle.step);
    Json steps = Json::array();
    for (const StepCoverage& c : f.steps) {
        Json one;
        one["step"] = stepName(c.step);
        if (!c.section.empty()) one["section"] = c.section;
        coverage(one, c);
        one["blind_poses"] = c.blindPoses;
        one["aside_poses"] = c.asidePoses;
        one["jumps"] = c.jumps;
        steps.push_back(one);
    }
    out["by_step"] = steps;
    return out;
}

Json byPosition(const Findings& f, const std::map<std::string, double>& values) {
    Json out = Json::object();
    for (const PositionLevel& p : f.positions) {
        const auto at = values.find(p.name);
        out[p.name] = at == values.end() ? Json(nullptr) : number(at->second);
    }
    return out;
}

Json adjustment(const Findings& f) {
    const AdjustmentAdvice& a = f.adjustment;
    Json out;
    out["wanted"] = a.wanted;
    out["feasible"] = a.feasible;
    out["shift_V"] = orNull(a.shift_V);
    out["target_raw_V"] = byPosition(f, a.targetRaw_V);
    out["after"] = byPosition(f, a.after_V);
    out["margin"] = orNull(a.margin);
    out["share"] = byPosition(f, a.share);
    out["turns"] = a.turns;
    out["volts_per_turn_V"] = orNull(a.voltsPerTurn_V);
    out["u_volts_per_turn_V"] = orNull(a.uVoltsPerTurn_V);
    return out;
}

Json machine(const Evaluation& e) {
    // Without a drive curve nobody knows what the machine makes of the signal.
    if (!e.setup.sheet.drive) return {{"stops", nullptr}, {"stops_possible", nullptr}};
    return {{"stops", e.findings.machine.stops}, {"stops_possible", e.findings.machine.stopsPossible}};
}

Json wear(const Findings& f) {
    Json out = Json::array();
    for (const WearBin& b : f.wear)
        out.push_back({{"from", number(b.from)},
                       {"to", number(b.to)},
                       {"time_s", number(b.time_s)},
                       {"dropouts", b.dropouts},
                       {"noise_V", number(b.noise_V)}});
    return out;
}

Json coldWarm(const Findings& f) {
    if (!f.coldWarm) return nullptr;
    const ColdWarm& c = *f.coldWarm;
    return {{"cold_poses", c.coldPoses}, {"cold_dropouts", c.coldDropouts},
            {"warm_poses", c.warmPoses}, {"warm_dropouts", c.warmDropouts},
            {"p", number(c.p)},          {"significant", c.significant}};
}

Json textOrNull(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

// How another program's file was read; all null for a capture.
Json import(const Evaluation& e) {
    const ImportTaken& t = e.summary.taken;
    const bool imported = e.summary.imported;
    Json out;
    out["time_column"] = textOrNull(t.timeColumn);
    out["date_column"] = textOrNull(t.dateColumn);
    out["volts_column"] = textOrNull(t.voltsColumn);
    out["reference_column"] = textOrNull(t.referenceColumn);
    out["columns_line"] = t.columnsLine > 0 ? Json(t.columnsLine) : Json(nullptr);
    out["delimiter"] = imported ? Json(std::string(1, t.delimiter)) : Json(nullptr);
    out["encoding"] = textOrNull(t.encoding);
    out["decimal_sign"] = t.decimal ? Json(*t.decimal == DecimalSign::comma ? "," : ".") : Json(nullptr);
    out["time_as"] = t.timeAs ? Json(nameOf(*t.timeAs)) : Json(nullptr);
    out["date_order"] = t.dateOrder ? Json(nameOf(*t.dateOrder)) : Json(nullptr);
    out["volts_unit"] = textOrNull(t.voltsUnit);
    out["without_number"] = imported ? Json(t.withoutNumber) : Json(nullptr);
    return out;
}

Json verdict(const Verdict& v) {
    Json out, causes = Json::array(), next = texts(wordsOf(v.next));
    for (const Cause& c : v.causes) causes.push_back(std::string(decisionName(c.decision)) + ": " + c.says.english());
    out["decision"] = decisionName(v.decision);
    out["reasons"] = texts(wordsOf(v.reasons));
    out["causes"] = causes;
    out["not_tested"] = texts(wordsOf(v.notTested));
    out["next"] = next;
    Json again = Json::array();
    for (const Step step : v.again) again.push_back(std::string(stepName(step)));
    out["again"] = again; // steps that would tell, done or done again
    out["condition"] = v.condition.empty() ? Json(nullptr) : Json(v.condition.english());
    return out;
}

} // namespace

std::string findingsJson(const Evaluation& e) {
    const Findings& f = e.findings;
    Json out;
    out["schema"] = 1;
    out["readings"] = f.readings;
    out["duration_s"] = toSeconds(f.duration);
    out["interval_s"] = f.meter.interval_s > 0 ? number(f.meter.interval_s) : Json(nullptr);
    out["assumed"] = texts(f.assumed);
    out["blind"] = blind(f.blind);
    out["phases"] = phases(f);
    out["dropouts"] = excursions(f, ExcursionKind::dropout);
    out["play"] = excursions(f, ExcursionKind::play);
    out["jumps"] = jumps(f);
    out["aside"] = aside(f);
    out["plateaus"] = plateaus(f);
    out["positions"] = positions(f);
    out["wiggle"] = wiggle(f);
    out["adjustment"] = adjustment(f);
    out["machine"] = machine(e);
    out["verdict"] = verdict(f.verdict);
    // Beyond the promised members.
    out["reference_moves"] = referenceMoves(f);
    out["reference_blind"] = blind(f.referenceBlind);
    out["reference"] = wire(f.reference);
    out["ground"] = wire(f.ground);
    out["wear"] = wear(f);
    out["cold_warm"] = coldWarm(f);
    out["over_voltage"] = f.overVoltage;
    out["warnings"] = texts(e.summary.warnings);
    Json outside = Json::array();
    for (const Excursion& one : e.outsideSteps) outside.push_back(excursion(one));
    out["dropouts_outside_steps"] = outside;
    out["import"] = import(e);
    out["sheets_that_fit"] = e.fittingSheets;
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace stillwire
