// SPDX-License-Identifier: GPL-3.0-or-later
// What a customer's report needs (complaint, cause, correction; common practice, no source), and how it was measured.
#include "app/cli/html.hpp"
#include "app/cli/spoken.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

class Table {
public:
    Table(const ReportInput& in, const char* kind) : in_(in), out_("<table class=\"" + std::string(kind) + "\">\n") {}

    void row(const Sentence& name, const Sentence& value) {
        out_ += "<tr><th>" + text(name) + "</th><td>" + text(value) + "</td></tr>\n";
    }
    // To be filled in by hand.
    void blank(const Sentence& name, const char* kind = "blank") {
        out_ += "<tr class=\"" + std::string(kind) + "\"><th>" + text(name) + "</th><td></td></tr>\n";
    }
    void cells(const std::vector<Sentence>& all, const char* cell) {
        out_ += "<tr>";
        for (const Sentence& one : all)
            out_ += "<" + std::string(cell) + ">" + text(one) + "</" + std::string(cell) + ">";
        out_ += "</tr>\n";
    }
    [[nodiscard]] std::string done() const { return out_ + "</table>\n"; }

private:
    [[nodiscard]] std::string text(const Sentence& s) const { return s.empty() ? "" : escapeHtml(in_.say(s)); }
    const ReportInput& in_;
    std::string out_;
};

template <class Is> std::optional<Time> timeOf(const std::vector<Mark>& marks, Is is) {
    const auto found = std::find_if(marks.begin(), marks.end(), is);
    return found == marks.end() ? std::nullopt : std::optional(found->time);
}

// "4.12 V" or that it was not measured.
Sentence level(const std::optional<double>& level_V, int decimals = 2) {
    return level_V ? verbatim(volts(*level_V, decimals)) : Sentence{"not measured"};
}

std::optional<double> levelOf(const Findings& f, const std::string& position) {
    for (const PositionLevel& p : f.positions)
        if (p.name == position) return p.level_V;
    return std::nullopt;
}
std::optional<double> levelOf(const std::optional<WireLevel>& wire) {
    return wire ? std::optional(wire->level_V) : std::nullopt;
}

Sentence rangeOf(const MeterRange& r) {
    const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(r.resolution_V) - 1e-9)), 0, 6);
    return {"%1, steps of %2, good to %3 %% + %4 counts",
            {volts(r.fullScale_V, r.fullScale_V < 10 ? 1 : 0), volts(r.resolution_V, decimals),
             plain(r.accuracyPercent, 2), plain(r.accuracyCounts, 0)}};
}

} // namespace

std::string jobTable(const ReportInput& in) {
    const Verdict& v = in.evaluation.findings.verdict;
    Table t(in, "pairs");
    t.blank("Machine, serial number, hours");
    t.blank("Technician");
    const std::string& started = in.evaluation.header.started;
    t.row("Date and time", started.empty() ? Sentence{"not known"} : verbatim(started));
    t.blank("Complaint", "tall");
    t.row("Cause found", v.reasons.empty() ? verdictSentence(v) : v.reasons.front().says);
    t.blank("Correction", "tall");
    t.row("Advice", v.next.empty() ? Sentence{"Nothing more to do."} : v.next.front().says);
    return t.done();
}

std::string measuredTable(const ReportInput& in) {
    const CaptureHeader& h = in.evaluation.header;
    const ExaminationSetup& s = in.evaluation.setup;
    const Findings& f = in.evaluation.findings;
    Table t(in, "pairs");
    t.row("Sensor sheet", {"%1", {byName(s.sheet.name)}});
    t.row("Where its figures come from",
          s.sheet.source.empty() ? Sentence{"not said in the sheet"} : Sentence{"%1", {byName(s.sheet.source)}});
    if (s.meterKnown) {
        t.row("Meter", {"%1", {byName(s.meter.name)}});
        for (const MeterRange& r : s.meter.ranges) t.row("Range", rangeOf(r));
    } else {
        t.row("Meter", "not described; accuracy of 1 % + 5 counts assumed");
    }
    t.blank("Meter model, last calibration");
    if (f.meter.interval_s > 0) t.row("Rate", {"one reading every %1 s", {plain(f.meter.interval_s, 2)}});
    t.row("Probe", h.probe == ProbeSide::sensorSide ? Sentence{"sensor side of the connector"}
                                                    : Sentence{"controller side of the connector"});
    t.row("Black lead",
          h.black == BlackLead::batteryNegative ? Sentence{"battery negative"} : Sentence{"sensor ground"});
    t.blank("Ambient temperature");
    const auto on = timeOf(in.marks, [](const Mark& m) { return m.as<KeyMark>() && m.as<KeyMark>()->on; });
    const auto cold = timeOf(in.marks, [](const Mark& m) { return m.opens(Step::coldStart); });
    if (on && cold && *cold >= *on) t.row("From key on to the cold look", verbatim(clockTime(*cold - *on)));
    if (!h.notes.empty()) t.row("Notes", {"%1", {byName(h.notes)}});
    t.row("Capture", verbatim(in.path));
    t.row("SHA-256 of its readings",
          in.hash.empty() ? Sentence{"none: not a capture of this program"} : verbatim(in.hash));
    return t.done();
}

std::string levelsTable(const ReportInput& in) {
    const Findings& now = in.evaluation.findings;
    const Sheet& sheet = in.evaluation.setup.sheet;
    const bool turned = in.before.has_value();
    const Findings& before = turned ? *in.before : now;
    Table t(in, "levels");
    t.cells({"Place", "Should be", "Before", "After"}, "th");
    // A sensor that was not turned has one setting: its levels stand under "before".
    const auto after = [&](Sentence measured) { return turned ? std::move(measured) : Sentence{"not turned"}; };
    const auto limits = [](const Window& w) { return Sentence{"%1 to %2", {plain(w.min_V, 2), volts(w.max_V)}}; };
    t.cells({"Reference", limits(sheet.reference), level(levelOf(before.reference), 3),
             after(level(levelOf(now.reference), 3))},
            "td");
    t.cells({"Ground",
             {"at most %1", {volts(sheet.maxDrop_V)}},
             level(levelOf(before.ground), 3),
             after(level(levelOf(now.ground), 3))},
            "td");
    for (const Position& p : sheet.positions)
        t.cells({{"%1", {byName(p.name)}},
                 limits(p.window),
                 level(levelOf(before, p.name)),
                 after(level(levelOf(now, p.name)))},
                "td");
    return t.done();
}

std::string closingTable(const ReportInput& in) {
    Table t(in, "pairs");
    t.blank("Part fitted, part number");
    t.blank("Torque, thread locker");
    t.blank("Relearn done, or not asked for");
    t.blank("Codes read before, cleared after");
    t.blank("Pierced wire: where, how sealed");
    t.blank("Tried on a cold morning");
    t.blank("Signature");
    return t.done();
}

} // namespace stillwire
