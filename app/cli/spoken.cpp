// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/spoken.hpp"

#include "app/cli/names.hpp"
#include "core/analyse/blind_mend.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

std::string count(std::size_t n, const std::string& one, const std::string& many) {
    return std::to_string(n) + " " + (n == 1 ? one : many);
}

// Two standard uncertainties: what a mechanic means by "good to".
std::string goodTo(double u_V) { return "good to " + volts(std::max(2 * u_V, 0.001), 2 * u_V < 0.01 ? 3 : 2); }

std::string windowText(const Window& w) { return plain(w.min_V, 2) + " to " + volts(w.max_V); }

Section about(const Evaluation& e, const std::string& path) {
    const Findings& f = e.findings;
    Section s{"The capture", {}};
    s.sentences.push_back(path + ", judged by the sheet \"" + e.setup.sheet.name + "\".");
    std::string rows = count(f.readings, "reading", "readings") + " over " + clockTime(f.duration);
    if (f.meter.interval_s > 0) rows += ", one every " + plain(f.meter.interval_s, 2) + " s";
    s.sentences.push_back(rows + ".");
    for (const std::string& w : e.summary.warnings) s.sentences.push_back("Warning: " + w);
    for (const Sentence& a : f.assumed) s.sentences.push_back("Assumed: " + a.english());
    return s;
}

std::string wireText(const char* name, const std::optional<WireLevel>& w, const std::string& limit) {
    if (!w) return std::string(name) + ": not measured.";
    std::string text = std::string(name) + ": " + volts(w->level_V, 3) + ", " + goodTo(w->u_V) + "; " + limit + ": " +
                       nameOf(w->conformance) + ".";
    if (w->visits > 1) text += " It changed by " + volts(w->change_V, 3) + " between looks.";
    return text;
}

Section levels(const Evaluation& e) {
    const Findings& f = e.findings;
    const Sheet& sheet = e.setup.sheet;
    Section s{"Levels", {}};
    s.sentences.push_back(wireText("Reference", f.reference, "limits " + windowText(sheet.reference)));
    s.sentences.push_back(wireText("Ground", f.ground, "at most " + volts(sheet.maxDrop_V)));
    for (const PositionLevel& p : f.positions) {
        if (!p.level_V) {
            s.sentences.push_back(p.name + ": not measured; window " + windowText(p.window_V) + ".");
            continue;
        }
        std::string text = p.name + ": " + volts(*p.level_V) + ", " + goodTo(p.u_V.value_or(0)) + "; window " +
                           windowText(p.window_V);
        if (p.conformance == Conformance::undecided)
            text += ": too close to call";
        else if (p.conformance)
            text += std::string(": ") + nameOf(*p.conformance);
        text += ". " + count(p.visits.size(), "visit", "visits");
        if (p.spread_V) text += ", spread " + volts(*p.spread_V, 3);
        text += ".";
        if (p.coldLevel_V) text += " First cold: " + volts(*p.coldLevel_V) + ".";
        const auto hangs = std::count_if(p.visits.begin(), p.visits.end(), [](const Visit& v) { return v.hang; });
        if (hangs > 0) text += " It hung short " + count(static_cast<std::size_t>(hangs), "time", "times") + ".";
        s.sentences.push_back(text);
    }
    return s;
}

std::string coverageText(const StepCoverage& c) {
    std::string text = std::string(stepName(c.step)) + ": ";
    const std::string poses = count(static_cast<std::size_t>(c.poses), "pose", "poses");
    if (c.poses == 0) return text + "no pose was looked at.";
    if (c.dropouts > 0) {
        text += "dropouts in " + std::to_string(c.dropouts) + " of " + poses;
    } else if (c.shortestVisible_s) {
        text += "none of " + secondsAtMost(*c.shortestVisible_s) + " or longer in " + poses;
    } else {
        text += poses + " held, but this meter cannot see the fault looked for";
    }
    if (c.jumps > 0) text += ", " + count(static_cast<std::size_t>(c.jumps), "level jump", "level jumps");
    if (c.blindPoses > 0) text += ", " + std::to_string(c.blindPoses) + " more while the meter was blind";
    text += ".";
    if (c.rateUpper95)
        text += " With 95 % confidence it shows in at most " + percentAtMost(*c.rateUpper95) + " of poses.";
    if (c.posesFor95.value_or(0) > 0) text += " " + std::to_string(*c.posesFor95) + " more clean poses wanted.";
    return text;
}

Section wiggles(const Findings& f) {
    Section s{"Wiggles", {}};
    for (const StepCoverage& c : f.steps) s.sentences.push_back(coverageText(c));
    if (f.coldWarm) {
        const ColdWarm& c = *f.coldWarm;
        s.sentences.push_back("Cold " + std::to_string(c.coldDropouts) + " of " + std::to_string(c.coldPoses) +
                              " poses, warm " + std::to_string(c.warmDropouts) + " of " +
                              std::to_string(c.warmPoses) +
                              (c.significant ? ": more than chance." : ": the difference may be chance."));
    }
    return s;
}

std::string where(const Excursion& e) {
    if (e.unmarked || !e.step) return "outside the steps";
    return std::string(stepName(*e.step)) + (e.pose.empty() ? "" : ", " + e.pose);
}

Section dropouts(const Findings& f, ExcursionKind kind) {
    constexpr std::size_t kMost = 20;
    Section s{kind == ExcursionKind::dropout ? "Dropouts" : "Play, which has no vote", {}};
    std::size_t more = 0;
    for (const Excursion& e : f.excursions) {
        if (e.kind != kind) continue;
        if (s.sentences.size() >= kMost) {
            ++more;
            continue;
        }
        s.sentences.push_back("At " + clockTime(e.from) + " (" + where(e) + "): from " + volts(e.held_V) + " " +
                              nameOf(e.direction) + " by at least " + volts(e.depth_V()) + ", seen in " +
                              count(static_cast<std::size_t>(std::max(0, e.readings)), "reading", "readings") +
                              (e.withReference ? ", the reference along with it" : "") +
                              (e.open ? ", and not back yet." : "."));
    }
    if (more > 0) s.sentences.push_back("And " + std::to_string(more) + " more.");
    return s;
}

Section oddities(const Evaluation& e) {
    const Findings& f = e.findings;
    Section s{"Also seen", {}};
    for (const LevelJump& j : f.jumps) {
        if (!j.step && !f.steps.empty()) continue; // the lead on its way from wire to wire
        s.sentences.push_back("At " + clockTime(j.at) + " the level moved by itself from " + volts(j.from_V) +
                              " to " + volts(j.to_V) + ".");
    }
    double blind_s = 0;
    for (const BlindSpan& b : f.blind) blind_s += toSeconds(b.to - b.from);
    if (!f.blind.empty())
        s.sentences.push_back("The meter was blind " + count(f.blind.size(), "time", "times") + ", for " +
                              seconds(blind_s) + " in all. " +
                              blindMend(f.blind, Time(0), f.blind.back().to).english());
    if (e.setup.sheet.drive)
        s.sentences.push_back(
            "On the machine: " + count(static_cast<std::size_t>(f.machine.stops), "sure stop", "sure stops") +
            ", and up to " + std::to_string(f.machine.stopsPossible) + " that the averaged readings allow.");
    if (f.overVoltage) s.sentences.push_back("The signal went over 5.5 V: stop, key off.");
    return s;
}

Section adjustment(const Findings& f) {
    const AdjustmentAdvice& a = f.adjustment;
    Section s{"Adjustment", {}};
    if (!a.wanted) return s;
    if (!a.feasible || !a.shift_V) {
        s.sentences.push_back("Wanted, but no turn brings every position inside its window.");
        return s;
    }
    s.sentences.push_back("Turn by " + volts(*a.shift_V) + " at rest.");
    for (const auto& [name, raw] : a.targetRaw_V) {
        const auto after = a.after_V.find(name);
        s.sentences.push_back("Aim at " + volts(raw) + " on the meter for \"" + name + "\"" +
                              (after != a.after_V.end()
                                   ? ", which makes " + volts(after->second) + " at the nominal reference."
                                   : "."));
    }
    if (a.voltsPerTurn_V)
        s.sentences.push_back("One turn made about " + volts(*a.voltsPerTurn_V, 3) + " in " +
                              std::to_string(a.turns) + " turns.");
    return s;
}

std::vector<Section> judgement(const Verdict& v) {
    std::vector<Section> out;
    out.push_back({"Verdict", {decisionSentence(v.decision)}});
    for (const Sentence& r : v.reasons) out.back().sentences.push_back(r.english());
    Section causes{"What it can be", {}}, notTested{"Not tested", {}}, next{"Next", {}};
    for (const Cause& c : v.causes) {
        std::string text = std::string(decisionName(c.decision)) + ": " + c.says.english();
        if (!c.nextTest.empty()) text += " To tell: " + c.nextTest.english();
        causes.sentences.push_back(text);
    }
    for (const Sentence& n : v.notTested) notTested.sentences.push_back(n.english());
    for (const Sentence& n : v.next) next.sentences.push_back(n.english());
    out.push_back(causes);
    out.push_back(notTested);
    out.push_back(next);
    return out;
}

std::string print(const std::vector<Section>& sections) {
    std::string out;
    for (const Section& s : sections) {
        if (s.sentences.empty()) continue;
        out += (out.empty() ? "" : "\n") + s.heading + "\n";
        for (const std::string& sentence : s.sentences) out += "  " + sentence + "\n";
    }
    return out;
}

} // namespace

const char* decisionSentence(Decision decision) {
    switch (decision) {
    case Decision::keep: return "Keep the sensor.";
    case Decision::adjust: return "Turn the sensor to its aim and confirm.";
    case Decision::replace: return "Replace the sensor.";
    case Decision::checkWiring: return "Look at the wiring first.";
    case Decision::checkSupply: return "Look at the supply of the reference first.";
    case Decision::checkLinkage: return "Look at the spring, the linkage and the part number first.";
    case Decision::cannotTell: return "Cannot tell yet.";
    }
    return "";
}

std::string clockTime(Time time) {
    const double s = toSeconds(time);
    if (s < 60) return plain(s, 1) + " s";
    const long whole = std::lround(s);
    const long hours = whole / 3600, minutes = whole / 60 % 60;
    return (hours > 0 ? std::to_string(hours) + " h " : "") + std::to_string(minutes) + " min " +
           std::to_string(whole % 60) + " s";
}

std::vector<Section> reportSections(const Evaluation& e, const std::string& path) {
    const Findings& f = e.findings;
    std::vector<Section> out{about(e, path),
                             levels(e),
                             wiggles(f),
                             dropouts(f, ExcursionKind::dropout),
                             dropouts(f, ExcursionKind::play),
                             oddities(e),
                             adjustment(f)};
    for (Section& s : judgement(f.verdict)) out.push_back(std::move(s));
    return out;
}

std::string spokenReport(const Evaluation& e, const std::string& path) { return print(reportSections(e, path)); }

std::string spokenVerdict(const Verdict& verdict) { return print(judgement(verdict)); }

} // namespace stillwire
