// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/findings_rows.hpp"

#include "app/window/words.hpp"
#include "core/judge/phrases.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

namespace stillwire {
namespace {

struct FindingText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(FindingText)
};
QString V(double volts_V, int decimals = 2) { return QString::fromStdString(volts(volts_V, decimals)); }
QString S(double time_s) { return QString::fromStdString(seconds(time_s)); }
QString counted(int n, const QString& one, const QString& many) { return n == 1 ? one : many.arg(n); }

QString clockText(double at_s) {
    const int whole = static_cast<int>(at_s);
    return QStringLiteral("%1:%2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

Wire wireRead(const std::optional<Step>& step) { return step ? traits(*step).wire : Wire::signal; }

// The dropouts of one wire, as a card of their own: what the ground wire shows is no fault of the signal.
bool dropoutsOf(Wire wire, const QString& on, const Findings& f, std::vector<FindingRow>& rows) {
    const Excursion* deepest = nullptr;
    int count = 0, poses = 0;
    for (const Excursion& e : f.excursions) {
        if (e.kind != ExcursionKind::dropout || wireRead(e.step) != wire) continue;
        ++count;
        if (!deepest || e.depth_V() > deepest->depth_V()) deepest = &e;
    }
    if (!deepest) return false;
    for (const StepCoverage& step : f.steps)
        if (wireRead(step.step) == wire && step.section.empty()) poses += step.poses;
    QString title = counted(count, FindingText::tr("1 dropout"), FindingText::tr("%1 dropouts"));
    if (poses > 0) title = FindingText::tr("%1 in %2 poses").arg(title).arg(poses);
    const bool up = deepest->direction == Direction::up;
    QString detail = (up ? FindingText::tr("%1 leapt to %2 or more") : FindingText::tr("%1 fell to %2 or less"))
                         .arg(V(deepest->held_V), V(deepest->extreme_V));
    if (!on.isEmpty()) detail = FindingText::tr("%1: %2").arg(on, detail);
    rows.push_back({up ? Shape::wedgeUp : Shape::wedgeDown, Role::fault, title, detail, toSeconds(deepest->from)});
    return true;
}

void dropouts(const Findings& f, std::vector<FindingRow>& rows) {
    const bool dropped = dropoutsOf(Wire::signal, {}, f, rows);
    dropoutsOf(Wire::reference, FindingText::tr("reference"), f, rows);
    dropoutsOf(Wire::ground, FindingText::tr("ground"), f, rows);
    const auto plays = std::count_if(f.excursions.begin(), f.excursions.end(),
                                     [](const Excursion& e) { return e.kind == ExcursionKind::play; });
    if (!f.jumps.empty()) {
        const LevelJump& jump = f.jumps.back();
        rows.push_back({Shape::step, Role::fault,
                        counted(static_cast<int>(f.jumps.size()), FindingText::tr("Moved by itself, once"),
                                FindingText::tr("Moved by itself, %1 times")),
                        FindingText::tr("%1 to %2").arg(V(jump.from_V), V(jump.to_V)), toSeconds(jump.at)});
    }
    if (!dropped && f.jumps.empty() && f.wiggle.poses > 0 && f.wiggle.shortestVisible_s)
        rows.push_back(
            {Shape::level, Role::good, FindingText::tr("None of %1 or longer").arg(S(*f.wiggle.shortestVisible_s)),
             counted(f.wiggle.poses, FindingText::tr("in 1 pose"), FindingText::tr("in %1 poses")), std::nullopt});
    if (plays > 0)
        rows.push_back(
            {Shape::play, Role::quietText,
             counted(static_cast<int>(plays), FindingText::tr("Play, once"), FindingText::tr("Play, %1 times")),
             FindingText::tr("inside what the sheet allows"), std::nullopt});
    if (!f.aside.empty())
        rows.push_back({Shape::aside, Role::quietText,
                        counted(static_cast<int>(f.aside.size()), FindingText::tr("Set aside, once"),
                                FindingText::tr("Set aside, %1 times")),
                        say(likelySaid(f.aside.back().likely)), toSeconds(f.aside.back().from)});
}

void wires(const Findings& f, std::vector<FindingRow>& rows) {
    auto bad = [](const std::optional<WireLevel>& wire) { return wire && wire->conformance == Conformance::outside; };
    auto fine = [](const std::optional<WireLevel>& wire) { return wire && wire->conformance == Conformance::inside; };
    if (fine(f.reference) && fine(f.ground)) {
        rows.push_back({Shape::tick, Role::good, FindingText::tr("Reference and ground hold"),
                        FindingText::tr("%1 and %2").arg(V(f.reference->level_V), V(f.ground->level_V)),
                        std::nullopt});
        return;
    }
    auto one = [&](const std::optional<WireLevel>& wire, const QString& name) {
        if (!wire) return;
        if (bad(wire))
            rows.insert(rows.begin(), {Shape::cross, Role::fault, FindingText::tr("%1 outside its limits").arg(name),
                                       V(wire->level_V, 3), std::nullopt});
        else if (fine(wire))
            rows.push_back(
                {Shape::tick, Role::good, FindingText::tr("%1 holds").arg(name), V(wire->level_V), std::nullopt});
        else
            rows.push_back({Shape::dots, Role::caution, FindingText::tr("%1 too near its limit").arg(name),
                            FindingText::tr("%1, this meter cannot decide").arg(V(wire->level_V, 3)), std::nullopt});
    };
    one(f.ground, FindingText::tr("Ground"));
    one(f.reference, FindingText::tr("Reference"));
}

void positions(const Findings& f, std::vector<FindingRow>& rows) {
    for (const PositionLevel& p : f.positions) {
        if (!p.level_V || !p.conformance) continue;
        QString name = sayName(p.name);
        if (!name.isEmpty()) name[0] = name[0].toUpper();
        const QString window =
            FindingText::tr("%1 · window %2 to %3")
                .arg(V(*p.level_V), QString::fromStdString(plain(p.window_V.min_V, 2)), V(p.window_V.max_V));
        const std::optional<double> at =
            p.visits.empty() ? std::nullopt : std::optional(toSeconds(p.visits.back().from));
        switch (*p.conformance) {
        case Conformance::inside:
            rows.push_back({Shape::tick, Role::good, FindingText::tr("%1 inside").arg(name), window, at});
            break;
        case Conformance::outside:
            rows.push_back({Shape::cross, Role::fault, FindingText::tr("%1 outside").arg(name), window, at});
            break;
        case Conformance::undecided:
            rows.push_back(
                {Shape::dots, Role::caution, FindingText::tr("%1 too near its edge").arg(name), window, at});
            break;
        }
    }
}

void blindTime(const std::vector<BlindSpan>& spans, const QString& words, std::vector<FindingRow>& rows) {
    double blind_s = 0;
    for (const BlindSpan& span : spans) blind_s += toSeconds(span.to - span.from);
    if (blind_s < 0.05) return;
    rows.push_back({Shape::hatch, Role::quietText, words.arg(S(blind_s)), blindCauseWords(spans.back().cause),
                    toSeconds(spans.back().from)});
}

} // namespace

std::vector<FindingRow> summaryRows(const Findings& f) {
    std::vector<FindingRow> rows;
    dropouts(f, rows);
    wires(f, rows);
    positions(f, rows);
    if (f.adjustment.wanted && f.adjustment.shift_V)
        rows.push_back({Shape::slope, Role::caution,
                        (*f.adjustment.shift_V > 0 ? FindingText::tr("Wants turning, up by %1")
                                                   : FindingText::tr("Wants turning, down by %1"))
                            .arg(V(std::abs(*f.adjustment.shift_V))),
                        f.adjustment.feasible ? FindingText::tr("every end can sit well inside")
                                              : FindingText::tr("no turn suits every end"),
                        std::nullopt});
    blindTime(f.blind, FindingText::tr("Blind for %1"), rows);
    blindTime(f.referenceBlind, FindingText::tr("Reference unseen for %1"), rows);
    if (f.coldWarm)
        rows.push_back({Shape::level, Role::quietText,
                        f.coldWarm->significant ? FindingText::tr("Cold and warm differ")
                                                : FindingText::tr("Cold and warm: no sure difference"),
                        FindingText::tr("%1 of %2 poses cold, %3 of %4 warm")
                            .arg(f.coldWarm->coldDropouts)
                            .arg(f.coldWarm->coldPoses)
                            .arg(f.coldWarm->warmDropouts)
                            .arg(f.coldWarm->warmPoses),
                        std::nullopt});
    // Faults first, then what needs care, then the rest as found.
    auto weight = [](const FindingRow& row) {
        return row.colour == Role::fault ? 0 : (row.colour == Role::caution ? 1 : 2);
    };
    std::stable_sort(rows.begin(), rows.end(),
                     [&](const FindingRow& a, const FindingRow& b) { return weight(a) < weight(b); });
    return rows;
}

std::vector<FindingRow> eventRows(const Findings& f) {
    std::vector<FindingRow> rows;
    for (const Excursion& e : f.excursions) {
        if (e.kind == ExcursionKind::aside) continue; // below, with the rest of what was set aside
        const bool play = e.kind == ExcursionKind::play, up = e.direction == Direction::up;
        QString where = e.step ? shortStepName(*e.step) : FindingText::tr("no step open");
        if (!e.pose.empty()) where += QStringLiteral(", ") + say({"%1", {placeAsSaid(e.pose)}});
        rows.push_back(
            {play ? Shape::play : (up ? Shape::wedgeUp : Shape::wedgeDown), play ? Role::quietText : Role::fault,
             FindingText::tr("%1  %2 to %3").arg(clockText(toSeconds(e.from)), V(e.held_V), V(e.extreme_V)), where,
             toSeconds(e.from)});
    }
    for (const Aside& a : f.aside)
        rows.push_back({Shape::aside, Role::quietText,
                        FindingText::tr("%1  %2 to %3").arg(clockText(toSeconds(a.from)), V(a.from_V), V(a.to_V)),
                        say(likelySaid(a.likely)), toSeconds(a.from)});
    for (const LevelJump& j : f.jumps)
        rows.push_back({Shape::step, Role::fault,
                        FindingText::tr("%1  %2 to %3").arg(clockText(toSeconds(j.at)), V(j.from_V), V(j.to_V)),
                        FindingText::tr("moved by itself"), toSeconds(j.at)});
    for (const BlindSpan& b : f.blind)
        rows.push_back(
            {Shape::hatch, Role::quietText,
             FindingText::tr("%1  blind for %2").arg(clockText(toSeconds(b.from)), S(toSeconds(b.to - b.from))),
             blindCauseWords(b.cause), toSeconds(b.from)});
    std::stable_sort(rows.begin(), rows.end(),
                     [](const FindingRow& a, const FindingRow& b) { return a.at_s < b.at_s; });
    return rows;
}

} // namespace stillwire
