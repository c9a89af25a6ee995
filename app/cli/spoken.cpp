// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/spoken.hpp"

#include "app/cli/spoken_levels.hpp"
#include "core/analyse/blind_mend.hpp"
#include "core/capture/taken.hpp"
#include "core/judge/phrases.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

Sentence stepOf(Step step) { return {stepText(step).title, {}}; }

std::string listed(const std::vector<std::string>& names) {
    std::string out;
    for (const std::string& name : names) out += (out.empty() ? "" : ", ") + name;
    return out;
}

Section about(const Evaluation& e, const std::string& path) {
    const Findings& f = e.findings;
    Section s{"The capture", {}};
    s.lines.push_back({{"%1, judged by the sheet \"%2\".", {path, byName(e.setup.sheet.name)}}});
    const Sentence rows = counted(f.readings, "1 reading", "%1 readings");
    if (f.meter.interval_s > 0)
        s.lines.push_back(
            {{"%1 over %2, one every %3 s.", {rows, clockTime(f.duration), plain(f.meter.interval_s, 2)}}});
    else
        s.lines.push_back({{"%1 over %2.", {rows, clockTime(f.duration)}}});
    if (e.summary.imported)
        for (const Sentence& t : takenSays(e.summary.taken)) s.lines.push_back({t});
    for (const Sentence& w : e.summary.warnings) s.lines.push_back({{"Warning: %1", {w}}});
    for (const Sentence& a : f.assumed) s.lines.push_back({{"Assumed: %1", {a}}});
    if (!e.fittingSheets.empty())
        s.lines.push_back(
            {{"No level of it lies in a window of this sheet. They would fit: %1.", {listed(e.fittingSheets)}}});
    return s;
}

Line coverageLine(const StepCoverage& c) {
    const Sentence place = c.section.empty() ? Sentence{"%1", {stepOf(c.step)}}
                                             : Sentence{"%1, %2", {stepOf(c.step), byName(c.section)}};
    if (c.poses == 0) return {{"%1: no pose was looked at.", {place}}};
    Line line;
    if (c.dropouts > 0)
        line.push_back({"%1: dropouts in %2 of %3.", {place, std::to_string(c.dropouts), countedPoses(c.poses)}});
    else if (c.shortestVisible_s)
        line.push_back(
            {"%1: none of %2 or longer in %3.", {place, secondsAtMost(*c.shortestVisible_s), countedPoses(c.poses)}});
    else
        line.push_back(
            {"%1: %2 held, but this meter cannot see the fault looked for.", {place, countedPoses(c.poses)}});
    if (c.jumps > 0) line.push_back({"Level jumps: %1.", {std::to_string(c.jumps)}});
    if (c.blindPoses > 0) line.push_back({"Poses while the meter was blind: %1.", {std::to_string(c.blindPoses)}});
    if (c.rateUpper95 && (c.shortestVisible_s || c.dropouts > 0))
        line.push_back({"With 95 %% confidence at most %1 of poses have one.", {percentAtMost(*c.rateUpper95)}});
    if (traits(c.step).requiredWiggle() && c.posesFor95.value_or(0) > 0)
        line.push_back({"Clean poses still wanted: %1.", {std::to_string(*c.posesFor95)}});
    return line;
}

Section wiggles(const Findings& f) {
    Section s{"Wiggles", {}};
    for (const StepCoverage& c : f.steps) s.lines.push_back(coverageLine(c));
    if (f.coldWarm) {
        const ColdWarm& c = *f.coldWarm;
        s.lines.push_back({{c.significant ? "Cold %1 of %2 poses, warm %3 of %4: more than chance."
                                          : "Cold %1 of %2 poses, warm %3 of %4: the difference may be chance.",
                            {std::to_string(c.coldDropouts), std::to_string(c.coldPoses),
                             std::to_string(c.warmDropouts), std::to_string(c.warmPoses)}}});
    }
    return s;
}

Sentence where(const Excursion& e) {
    if (e.unmarked || !e.step) return "outside the steps";
    if (e.pose.empty()) return {"%1", {stepOf(*e.step)}};
    return {"%1, %2", {stepOf(*e.step), placeAsSaid(e.pose)}};
}

std::size_t posesWithOne(const Findings& f) {
    int poses = 0;
    for (const StepCoverage& step : f.steps)
        if (step.section.empty()) poses += step.dropouts;
    return static_cast<std::size_t>(poses);
}

// At most this many are told one by one.
constexpr std::size_t kMostDropouts = 20;

void addDropouts(Section& s, const std::vector<Excursion>& dropouts) {
    for (const Excursion& e : dropouts) {
        if (s.lines.size() == kMostDropouts) {
            s.lines.push_back({{"And %1 more.", {std::to_string(dropouts.size() - kMostDropouts)}}});
            break;
        }
        Line line{{e.direction == Direction::down ? "At %1 (%2): from %3 down by at least %4, seen in %5."
                                                  : "At %1 (%2): from %3 up by at least %4, seen in %5.",
                   {clockTime(e.from), where(e), volts(e.held_V), volts(e.depth_V()),
                    counted(static_cast<std::size_t>(std::max(0, e.readings)), "1 reading", "%1 readings")}}};
        if (e.withReference) line.push_back("The reference went along with it.");
        if (e.open) line.push_back("It had not come back at the end.");
        s.lines.push_back(std::move(line));
    }
}

Section dropouts(const Findings& f, ExcursionKind kind) {
    Section s{kind == ExcursionKind::dropout ? Sentence{"Dropouts"} : Sentence{"Play, which has no vote"}, {}};
    std::vector<Excursion> told;
    for (const Excursion& e : f.excursions)
        if (e.kind == kind) told.push_back(e);
    addDropouts(s, told);
    const std::size_t poses = posesWithOne(f);
    if (kind == ExcursionKind::dropout && poses > 0 && told.size() != poses)
        s.lines.push_back(
            {"Poses are counted beside them: one that lasts on counts in each pose it is in, several in "
             "one pose count once, and one that the reference shares or that lies outside the poses "
             "counts in none."});
    return s;
}

Section outsideSteps(const Evaluation& e) {
    Section s{"Dropouts outside the steps, which no step counts", {}};
    addDropouts(s, e.outsideSteps);
    return s;
}

Section oddities(const Evaluation& e) {
    const Findings& f = e.findings;
    Section s{"Also seen", {}};
    for (const LevelJump& j : f.jumps) {
        if (!j.step && !f.steps.empty()) continue; // the lead on its way from wire to wire
        s.lines.push_back(
            {{"At %1 the level moved by itself from %2 to %3.", {clockTime(j.at), volts(j.from_V), volts(j.to_V)}}});
    }
    for (const Aside& a : f.aside)
        s.lines.push_back({{"At %1 it went from %2 to %3: %4. It speaks for no fault.",
                            {clockTime(a.from), volts(a.from_V), volts(a.to_V), likelySaid(a.likely)}}});
    const auto blind = [&s](const char* pattern, const std::vector<BlindSpan>& spans) {
        if (spans.empty()) return;
        double blind_s = 0;
        for (const BlindSpan& b : spans) blind_s += toSeconds(b.to - b.from);
        s.lines.push_back({{pattern, {counted(spans.size(), "1 time", "%1 times"), seconds(blind_s)}},
                           blindMend(spans, Time(0), spans.back().to)});
    };
    blind("The meter was blind %1, for %2 in all.", f.blind);
    blind("The meter on the reference was blind %1, for %2 in all.", f.referenceBlind);
    if (e.setup.sheet.drive && f.machine.stopsPossible > 0)
        s.lines.push_back({{"On the machine: %1, and up to %2 that the averaged readings allow.",
                            {counted(static_cast<std::size_t>(f.machine.stops), "1 sure stop", "%1 sure stops"),
                             std::to_string(f.machine.stopsPossible)}}});
    if (f.overVoltage)
        s.lines.push_back({{"It went over %1: stop, key off.", {volts(e.setup.sheet.overVoltage_V())}}});
    return s;
}

// The levels have a section of their own. The first cause is the verdict itself; what tells another from it stands
// beside that one.
std::vector<Section> judgement(const Verdict& v) {
    Section verdict{"Verdict", {{verdictSentence(v)}}};
    for (const auto& reason : v.reasons)
        if (reason.kind != ReasonKind::level) verdict.lines.push_back({reason.says});
    Section causes{"What else it can be", {}}, notTested{"Not tested", {}}, next{"Next", {}};
    std::vector<Sentence> told;
    for (std::size_t i = 1; i < v.causes.size(); ++i) {
        const Cause& c = v.causes[i];
        Line line{{"%1: %2", {byName(decisionName(c.decision)), c.says}}};
        if (!c.nextTest.empty()) line.push_back({"To tell: %1", {c.nextTest}});
        if (c.nextTest != v.causes.front().nextTest) told.push_back(c.nextTest);
        causes.lines.push_back(std::move(line));
    }
    for (const auto& one : v.notTested) notTested.lines.push_back({one.says});
    for (const auto& one : v.next)
        if (std::find(told.begin(), told.end(), one.says) == told.end()) next.lines.push_back({one.says});
    return {std::move(verdict), std::move(causes), std::move(notTested), std::move(next)};
}

std::string print(const std::vector<Section>& sections) {
    std::string out;
    for (const Section& s : sections) {
        if (s.lines.empty()) continue;
        out += (out.empty() ? "" : "\n") + s.heading.english() + "\n";
        for (const Line& line : s.lines) {
            out += " ";
            for (const Sentence& sentence : line) out += " " + sentence.english();
            out += "\n";
        }
    }
    return out;
}

} // namespace

Sentence decisionSentence(Decision decision) {
    switch (decision) {
    case Decision::keep: return "Keep the sensor.";
    case Decision::adjust: return "Turn the sensor to its aim and confirm.";
    case Decision::replace: return "Replace the sensor.";
    case Decision::checkWiring: return "Look at the wiring first.";
    case Decision::checkSupply: return "Look at the supply of the reference first.";
    case Decision::checkLinkage: return "Look at the spring, the linkage and the part number first.";
    case Decision::cannotTell: break;
    }
    return "Cannot tell yet.";
}

Sentence verdictSentence(const Verdict& v) {
    return v.condition.empty() ? decisionSentence(v.decision) : Sentence{"Replace the sensor, %1.", {v.condition}};
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
    std::vector<Section> out{
        about(e, path),  levelsSection(f, e.setup.sheet),  wiggles(f),  dropouts(f, ExcursionKind::dropout),
        outsideSteps(e), dropouts(f, ExcursionKind::play), oddities(e), adjustmentSection(f, e.setup.sheet)};
    for (Section& s : judgement(f.verdict)) out.push_back(std::move(s));
    return out;
}

std::string spokenReport(const Evaluation& e, const std::string& path) { return print(reportSections(e, path)); }

std::string spokenVerdict(const Findings& findings, const Sheet& sheet) {
    std::vector<Section> out{levelsSection(findings, sheet)};
    for (Section& s : judgement(findings.verdict)) out.push_back(std::move(s));
    return print(out);
}

} // namespace stillwire
