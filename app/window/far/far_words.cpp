// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/far/far_words.hpp"

#include "app/window/words.hpp"

#include <QCoreApplication>

namespace stillwire {
namespace {

struct FarText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(FarText)
};

QString ofStep(const Prompt& prompt) {
    const QString there = sayName(prompt.position);
    switch (*prompt.step) {
    case Step::hookUp: return FarText::tr("Black lead to the battery,\nred lead to the reference");
    case Step::reference: return FarText::tr("Touch nothing: reading\nthe reference wire");
    case Step::ground: return FarText::tr("Touch nothing: reading\nthe ground wire");
    case Step::coldStart: return FarText::tr("Hands and feet off,\nlet it rest");
    case Step::leadCheck: return FarText::tr("Push only the leads,\nat clip and tip");
    case Step::wiggleShaft: return FarText::tr("Push the shaft sideways\nand hold");
    case Step::wiggleHarness: return FarText::tr("Bend one section\nof the harness and hold");
    case Step::fullPress:
    case Step::confirm:
    case Step::release:
        if (!there.isEmpty()) return FarText::tr("Go to: %1\nand hold it there").arg(there);
        return FarText::tr("Move to each position\nand hold it there");
    case Step::sweep: return FarText::tr("Slowly from end to end\nand back, no stopping");
    case Step::lift: return FarText::tr("Does the arm rest on its\nstop? Lift it a little");
    case Step::warmRepeat: return FarText::tr("Later, warm: push the\nshaft sideways and hold");
    case Step::adjust:
        if (prompt.aim_V)
            return FarText::tr("Turn until the meter\nshows %1").arg(QString::fromStdString(volts(*prompt.aim_V, 3)));
        return FarText::tr("Loosen the sensor, turn\nit to the aim");
    case Step::putBack: return FarText::tr("Key off and wait,\nunplug nothing yet");
    case Step::connectorHeld: return FarText::tr("Hold the plug still,\npush the shaft and hold");
    case Step::wiggleReference: return FarText::tr("Lead on the reference:\npush the shaft and hold");
    case Step::wiggleGround: return FarText::tr("Lead on the ground wire:\npush the shaft and hold");
    }
    return {};
}

QString ofPrompt(const Prompt& prompt) {
    switch (prompt.question) {
    case Question::badReference: return FarText::tr("The reference is bad:\nend here, or go on?");
    case Question::badGround: return FarText::tr("The ground wire is bad:\nend here, or go on?");
    case Question::finish: return FarText::tr("Nothing left changes the\nverdict: end here?");
    case Question::none: break;
    }
    if (prompt.finished) return FarText::tr("The run is over");
    if (!prompt.step) return {};
    if (prompt.movingLead && prompt.wire == Wire::reference) return FarText::tr("Red lead to the\nreference wire");
    if (prompt.movingLead && prompt.wire == Wire::ground) return FarText::tr("Red lead to the\nground wire");
    if (prompt.movingLead) return FarText::tr("Red lead to the\nsignal wire");
    return ofStep(prompt);
}

} // namespace

QStringList farInstruction(const Prompt& prompt) {
    return ofPrompt(prompt).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

bool handsBusy(const Prompt& prompt) {
    if (!prompt.step || prompt.finished || prompt.stopNow || prompt.movingLead) return false;
    if (prompt.question != Question::none || !prompt.choices.empty()) return false;
    // Before a lead is on, and after the key is off, there is more to read; while turning, the aim is the thing to
    // see.
    return *prompt.step != Step::hookUp && *prompt.step != Step::putBack && *prompt.step != Step::adjust;
}

} // namespace stillwire
