// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/words.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

namespace stillwire {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Words", text); }
QString figure(const std::string& text) { return QString::fromStdString(text); }

int decimalsFor(double resolution_V) {
    if (!(resolution_V > 0)) return 3;
    return std::clamp(static_cast<int>(std::ceil(-std::log10(resolution_V) - 1e-9)), 0, 3);
}

StateWord dropped(const Excursion& excursion, int decimals) {
    const QString depth = figure(volts(excursion.depth_V(), std::min(decimals, 2)));
    if (excursion.direction == Direction::up)
        return {WireState::dropped, Shape::peak, tr("Leapt"), tr("by at least %1, and back").arg(depth)};
    return {WireState::dropped, Shape::notch, tr("Dropped"), tr("by at least %1").arg(depth)};
}

} // namespace

QString say(const Sentence& sentence) {
    if (sentence.empty()) return {};
    const QString pattern = QCoreApplication::translate("core", sentence.pattern);
    return QString::fromStdString(fill(pattern.toStdString(), sentence.arguments));
}

QString shortStepName(Step step) {
    switch (step) {
    case Step::hookUp: return tr("hook-up");
    case Step::reference: return tr("reference");
    case Step::ground: return tr("ground");
    case Step::coldStart: return tr("cold");
    case Step::wiggleShaft: return tr("shaft");
    case Step::wiggleHarness: return tr("harness");
    case Step::fullPress: return tr("press");
    case Step::sweep: return tr("sweep");
    case Step::release: return tr("release");
    case Step::lift: return tr("lift");
    case Step::warmRepeat: return tr("warm");
    case Step::adjust: return tr("adjust");
    case Step::confirm: return tr("confirm");
    case Step::putBack: return tr("put back");
    case Step::wiggleReference: return tr("5 V wire");
    case Step::wiggleGround: return tr("ground wire");
    }
    return {};
}

QString decisionWords(Decision decision) {
    switch (decision) {
    case Decision::keep: return tr("keep the sensor");
    case Decision::adjust: return tr("adjust the sensor");
    case Decision::replace: return tr("replace the sensor");
    case Decision::checkWiring: return tr("check the wiring");
    case Decision::checkSupply: return tr("check the supply");
    case Decision::checkLinkage: return tr("check the linkage");
    case Decision::cannotTell: return tr("cannot tell yet");
    }
    return {};
}

QString phaseWord(PhaseKind kind) {
    switch (kind) {
    case PhaseKind::quiet: return tr("quiet");
    case PhaseKind::wiggle: return tr("wiggle");
    case PhaseKind::travel: return tr("travel");
    case PhaseKind::blind: return tr("blind");
    }
    return {};
}

QString blindCauseWords(BlindCause cause) {
    switch (cause) {
    case BlindCause::autorange: return tr("lock the range on the meter");
    case BlindCause::gap: return tr("no readings came: lead or meter?");
    case BlindCause::overload: return tr("over its range: set a higher one");
    case BlindCause::hold: return tr("hold is on: switch it off");
    case BlindCause::frozen: return tr("the same number: meter asleep?");
    case BlindCause::unit: return tr("set the meter to DC volts");
    }
    return {};
}

StateWord stateWord(const SessionSnapshot& snapshot) {
    const Findings& findings = *snapshot.findings;
    const int decimals = decimalsFor(findings.meter.resolution_V);
    WireState state = findings.state;
    if (findings.overVoltage || snapshot.prompt.stopNow || state == WireState::overVoltage)
        return {WireState::overVoltage, Shape::stop, tr("Over 5.5 V"), tr("stop, key off")};

    const auto last = std::find_if(findings.excursions.rbegin(), findings.excursions.rend(),
                                   [](const Excursion& e) { return e.kind == ExcursionKind::dropout; });
    const bool fresh =
        last != findings.excursions.rend() && (last->open || toSeconds(snapshot.now - last->to) < kDropoutStays_s);
    if (state == WireState::dropped || (fresh && (state == WireState::steady || state == WireState::moving))) {
        if (last != findings.excursions.rend()) return dropped(*last, decimals);
        return {WireState::dropped, Shape::notch, tr("Dropped"), {}};
    }
    switch (state) {
    case WireState::steady:
        return {state, Shape::level, tr("Steady"),
                tr("held at %1").arg(figure(volts(findings.meter.held_V, decimals)))};
    case WireState::moving: return {state, Shape::slope, tr("Moving"), tr("no level held yet")};
    case WireState::jumped: {
        QString detail = tr("no step asked for it");
        if (!findings.jumps.empty()) {
            const LevelJump& jump = findings.jumps.back();
            detail = tr("from %1 to %2").arg(figure(volts(jump.from_V)), figure(volts(jump.to_V)));
        }
        return {state, Shape::step, tr("Moved by itself"), detail};
    }
    case WireState::blind:
        return {state, Shape::hatch, tr("Blind"),
                findings.blind.empty() ? QString() : blindCauseWords(findings.blind.back().cause)};
    default: break;
    }
    return {WireState::silent, Shape::dots, tr("No reading"), tr("waiting for the meter")};
}

QStringList cautionWords(const Prompt& prompt) {
    QStringList all;
    if (prompt.stopNow) all << tr("Stop. Key off now.");
    for (const Sentence& caution : prompt.cautions) all << say(caution);
    return all;
}

QString wireWords(Wire wire, bool onItsWay) {
    switch (wire) {
    case Wire::reference:
        return onItsWay ? tr("red lead to the reference wire") : tr("red lead on the reference wire");
    case Wire::ground: return onItsWay ? tr("red lead to the ground wire") : tr("red lead on the ground wire");
    case Wire::signal: return onItsWay ? tr("red lead to the signal wire") : tr("red lead on the signal wire");
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
