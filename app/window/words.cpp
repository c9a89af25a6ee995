// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/words.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

namespace stillwire {
namespace {

struct WordText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(WordText)
};
QString figure(const std::string& text) { return QString::fromStdString(text); }

int decimalsFor(double resolution_V) {
    if (!(resolution_V > 0)) return 3;
    return std::clamp(static_cast<int>(std::ceil(-std::log10(resolution_V) - 1e-9)), 0, 3);
}

StateWord dropped(const Excursion& excursion, int decimals) {
    const QString depth = figure(volts(excursion.depth_V(), std::min(decimals, 2)));
    if (excursion.direction == Direction::up)
        return {WireState::dropped, Shape::peak, WordText::tr("Leapt"),
                WordText::tr("by at least %1, and back").arg(depth)};
    return {WireState::dropped, Shape::notch, WordText::tr("Dropped"), WordText::tr("by at least %1").arg(depth)};
}

} // namespace

QString shortStepName(Step step) {
    switch (step) {
    case Step::hookUp: return WordText::tr("hook-up");
    case Step::reference: return WordText::tr("reference");
    case Step::ground: return WordText::tr("ground");
    case Step::coldStart: return WordText::tr("cold");
    case Step::leadCheck: return WordText::tr("leads");
    case Step::wiggleShaft: return WordText::tr("shaft");
    case Step::wiggleHarness: return WordText::tr("harness");
    case Step::fullPress: return WordText::tr("press");
    case Step::sweep: return WordText::tr("sweep");
    case Step::release: return WordText::tr("release");
    case Step::lift: return WordText::tr("lift");
    case Step::warmRepeat: return WordText::tr("warm");
    case Step::adjust: return WordText::tr("adjust");
    case Step::confirm: return WordText::tr("confirm");
    case Step::putBack: return WordText::tr("put back");
    case Step::connectorHeld: return WordText::tr("plug held");
    case Step::wiggleReference: return WordText::tr("5 V wire");
    case Step::wiggleGround: return WordText::tr("ground wire");
    }
    return {};
}

QString decisionWords(Decision decision) {
    switch (decision) {
    case Decision::keep: return WordText::tr("keep the sensor");
    case Decision::adjust: return WordText::tr("adjust the sensor");
    case Decision::replace: return WordText::tr("replace the sensor");
    case Decision::checkWiring: return WordText::tr("check the wiring");
    case Decision::checkSupply: return WordText::tr("check the supply");
    case Decision::checkLinkage: return WordText::tr("check the linkage");
    case Decision::cannotTell: return WordText::tr("cannot tell yet");
    }
    return {};
}

QString verdictWords(const Verdict& verdict) {
    const QString words = decisionWords(verdict.decision);
    return verdict.condition.empty() ? words : words + QStringLiteral(", ") + say(verdict.condition);
}

QString phaseWord(PhaseKind kind) {
    switch (kind) {
    case PhaseKind::quiet: return WordText::tr("quiet");
    case PhaseKind::wiggle: return WordText::tr("wiggle");
    case PhaseKind::travel: return WordText::tr("travel");
    case PhaseKind::blind: return WordText::tr("blind");
    }
    return {};
}

QString blindCauseWords(BlindCause cause) {
    switch (cause) {
    case BlindCause::autorange: return WordText::tr("lock the range on the meter");
    case BlindCause::gap: return WordText::tr("no readings came: lead or meter?");
    case BlindCause::overload: return WordText::tr("over its range: set a higher one");
    case BlindCause::hold: return WordText::tr("hold is on: switch it off");
    case BlindCause::frozen: return WordText::tr("the same number: meter asleep?");
    case BlindCause::unit: return WordText::tr("set the meter to DC volts");
    }
    return {};
}

StateWord stateWord(const SessionSnapshot& snapshot) {
    const Findings& findings = *snapshot.findings;
    const int decimals = decimalsFor(findings.meter.resolution_V);
    WireState state = findings.state;
    if (findings.overVoltage || snapshot.prompt.stopNow || state == WireState::overVoltage)
        return {WireState::overVoltage, Shape::stop, WordText::tr("Over 5.5 V"), WordText::tr("stop, key off")};

    const auto last = std::find_if(findings.excursions.rbegin(), findings.excursions.rend(),
                                   [](const Excursion& e) { return e.kind == ExcursionKind::dropout; });
    const bool fresh =
        last != findings.excursions.rend() && (last->open || toSeconds(snapshot.now - last->to) < kDropoutStays_s);
    if (state == WireState::dropped || (fresh && (state == WireState::steady || state == WireState::moving))) {
        if (last != findings.excursions.rend()) return dropped(*last, decimals);
        return {WireState::dropped, Shape::notch, WordText::tr("Dropped"), {}};
    }
    // What a meter shows before its lead is on the wire says nothing about the wire.
    const Prompt& prompt = snapshot.prompt;
    const bool leadOff = snapshot.guided && prompt.step && (prompt.step == Step::hookUp || prompt.movingLead);
    if (leadOff && (state == WireState::steady || state == WireState::moving || state == WireState::jumped))
        return {WireState::silent, Shape::dots, WordText::tr("Waiting"), WordText::tr("until the lead is on")};
    switch (state) {
    case WireState::steady:
        return {state, Shape::level, WordText::tr("Steady"),
                WordText::tr("held at %1").arg(figure(volts(findings.meter.held_V, decimals)))};
    case WireState::moving: return {state, Shape::slope, WordText::tr("Moving"), WordText::tr("no level held yet")};
    case WireState::jumped: {
        QString detail = WordText::tr("no step asked for it");
        if (!findings.jumps.empty()) {
            const LevelJump& jump = findings.jumps.back();
            detail = WordText::tr("from %1 to %2").arg(figure(volts(jump.from_V)), figure(volts(jump.to_V)));
        }
        return {state, Shape::step, WordText::tr("Moved by itself"), detail};
    }
    case WireState::blind:
        return {state, Shape::hatch, WordText::tr("Blind"),
                findings.blind.empty() ? QString() : blindCauseWords(findings.blind.back().cause)};
    default: break;
    }
    return {WireState::silent, Shape::dots, WordText::tr("No reading"), WordText::tr("waiting for the meter")};
}

QStringList cautionWords(const Prompt& prompt) {
    QStringList all;
    if (prompt.stopNow) all << WordText::tr("Stop. Key off now.");
    for (const Sentence& caution : prompt.cautions) all << say(caution);
    return all;
}

QString wireWords(Wire wire, bool onItsWay) {
    switch (wire) {
    case Wire::reference:
        return onItsWay ? WordText::tr("red lead to the reference wire")
                        : WordText::tr("red lead on the reference wire");
    case Wire::ground:
        return onItsWay ? WordText::tr("red lead to the ground wire") : WordText::tr("red lead on the ground wire");
    case Wire::signal:
        return onItsWay ? WordText::tr("red lead to the signal wire") : WordText::tr("red lead on the signal wire");
    case Wire::none: break;
    }
    return {};
}

QString numberText(double volts_V, double resolution_V) {
    if (!std::isfinite(volts_V)) return QStringLiteral("----");
    int decimals = decimalsFor(resolution_V);
    for (double limit = 10; std::abs(volts_V) >= limit - 0.5 * std::pow(10.0, -decimals) && decimals > 0; limit *= 10)
        decimals = std::min(decimals, 3 - static_cast<int>(std::lround(std::log10(limit))));
    return QString::fromStdString(plain(volts_V, std::max(0, decimals)));
}

} // namespace stillwire
