// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/band.hpp"

#include "app/language/say.hpp"

#include <QCoreApplication>

namespace stillwire {
namespace {
struct BandText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(BandText)
};

Wire wireOfStep(Step step) { return step == Step::hookUp ? Wire::none : traits(step).wire; }

struct Where {
    Wire wire = Wire::signal;
    std::string position;
};

// From recorded marks, newest first: a position counts within the step it was marked in.
Where whereBy(const std::vector<Mark>& marks) {
    Where where;
    for (auto mark = marks.rbegin(); mark != marks.rend(); ++mark) {
        const auto* position = mark->as<PositionMark>();
        if (position && where.position.empty()) where.position = position->name;
        if (mark->as<StepEndMark>()) break;
        const auto* opened = mark->as<StepMark>();
        if (!opened) continue;
        where.wire = wireOfStep(opened->step);
        break;
    }
    return where;
}

} // namespace

Wire wireUnderTest(const SessionSnapshot& snapshot) {
    return snapshot.prompt.step ? snapshot.prompt.wire : whereBy(snapshot.marks).wire;
}

std::vector<AwaySpan> awayFromSignal(const std::vector<Mark>& marks, Time now) {
    std::vector<AwaySpan> spans;
    std::optional<Time> since;
    for (const Mark& mark : marks) {
        const auto* opened = mark.as<StepMark>();
        if (!opened) continue; // between two steps the lead stays where it is
        const bool away = wireOfStep(opened->step) != Wire::signal;
        if (away && !since) since = mark.time;
        if (!away && since) {
            spans.push_back({*since, mark.time});
            since.reset();
        }
    }
    if (since) spans.push_back({*since, now});
    return spans;
}

Time onAWireFrom(const std::vector<Mark>& marks, Time now) {
    bool hookUp = false;
    for (const Mark& mark : marks) {
        const auto* opened = mark.as<StepMark>();
        if (!opened) continue;
        if (opened->step != Step::hookUp) return hookUp ? mark.time : Time{0};
        hookUp = true;
    }
    return hookUp ? now : Time{0};
}

std::optional<PoseSpan> posesOf(const std::vector<Mark>& marks, Step step, Time now) {
    std::optional<PoseSpan> found;
    bool inStep = false, open = false;
    for (const Mark& mark : marks) {
        if (mark.as<StepMark>() || mark.as<StepEndMark>()) {
            if (open) found->to_s = toSeconds(mark.time);
            inStep = mark.opens(step);
            open = false;
        } else if (mark.as<PoseMark>() && inStep && !open) {
            found = PoseSpan{toSeconds(mark.time), toSeconds(now)};
            open = true;
        }
    }
    return found;
}

double shownVolts(double level_V, const Sheet& sheet, const Findings& findings) {
    const double reference_V = findings.reference ? findings.reference->level_V : sheet.nominal_V;
    const double ground_V = findings.ground ? findings.ground->level_V : 0.0;
    if (!(sheet.nominal_V > 0)) return level_V;
    return ground_V + level_V * (reference_V - ground_V) / sheet.nominal_V;
}

Band bandUnderTest(const Sheet& sheet, const SessionSnapshot& snapshot) {
    const Prompt& prompt = snapshot.prompt;
    Wire wire = prompt.wire;
    std::string name = prompt.position;
    if (!prompt.step) {
        const Where where = whereBy(snapshot.marks);
        wire = where.wire;
        name = where.position;
    }
    if (wire == Wire::reference) return {BandText::tr("reference limits"), sheet.reference, {}};
    if (wire == Wire::ground) return {BandText::tr("ground drop allowed"), {0.0, sheet.maxDrop_V}, {}};
    if (sheet.positions.empty()) return {};
    const Position* found = sheet.find(name);
    const Position& position = found ? *found : sheet.rest();
    return {BandText::tr("%1 window").arg(sayName(position.name)),
            {shownVolts(position.window.min_V, sheet, *snapshot.findings),
             shownVolts(position.window.max_V, sheet, *snapshot.findings)},
            prompt.aim_V};
}

QString bandLabel(const Band& band) {
    return BandText::tr("%1 %2 to %3")
        .arg(band.name, QString::fromStdString(plain(band.shown_V.min_V, 2)),
             QString::fromStdString(volts(band.shown_V.max_V, 2)));
}

} // namespace stillwire
