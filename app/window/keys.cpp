// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/keys.hpp"

#include <QCoreApplication>
#include <QStringList>

namespace stillwire {
namespace {
QString tr(const char* text) { return QCoreApplication::translate("Keys", text); }
} // namespace

std::vector<KeyEntry> keyTable() {
    using A = KeyAction;
    using G = KeyGroup;
    return {
        {A::next, G::hand, {Qt::Key_Space}, tr("go on")},
        {A::back, G::hand, {Qt::Key_Backspace}, tr("back: undo what just ended, or start the step again")},
        {A::skip, G::hand, {Qt::Key_S}, tr("skip this step; it stands in the verdict as not tested")},
        {A::choice1, G::hand, {Qt::Key_1}, tr("first answer")},
        {A::choice2, G::hand, {Qt::Key_2}, tr("second answer")},
        {A::choice3, G::hand, {Qt::Key_3}, tr("third answer")},
        {A::choice4, G::hand, {Qt::Key_4}, tr("fourth answer")},
        {A::turnIn, G::hand, {Qt::Key_T}, tr("adjusting: a part-turn made, one way")},
        {A::turnOut,
         G::hand,
         {QKeySequence(Qt::SHIFT | Qt::Key_T)},
         tr("adjusting: a part-turn made, the other way")},
        {A::stop, G::hand, {QKeySequence(Qt::CTRL | Qt::Key_E)}, tr("end the run here")},
        {A::mute, G::hand, {Qt::Key_M}, tr("mute all, and sound again")},
        {A::hum, G::hand, {Qt::Key_V}, tr("a tone that follows the voltage")},
        {A::aloud, G::hand, {Qt::Key_L}, tr("speak the prompts, or only show them")},
        {A::scrollBack, G::wire, {Qt::Key_Left}, tr("earlier")},
        {A::scrollOn, G::wire, {Qt::Key_Right}, tr("later")},
        {A::zoomIn, G::wire, {Qt::Key_Plus, Qt::Key_Equal}, tr("a shorter time on show")},
        {A::zoomOut, G::wire, {Qt::Key_Minus}, tr("a longer time on show")},
        {A::showAll, G::wire, {Qt::Key_Home}, tr("the whole session")},
        {A::followEnd, G::wire, {Qt::Key_End}, tr("follow the newest reading")},
        {A::nextEvent, G::wire, {Qt::Key_Period}, tr("to the next finding")},
        {A::previousEvent, G::wire, {Qt::Key_Comma}, tr("to the finding before")},
        {A::hideVerdict, G::lesson, {Qt::Key_H}, tr("hide the verdict, and show it")},
        {A::coldWarm, G::lesson, {Qt::Key_C}, tr("lay the warm wiggle over the cold one")},
        {A::strike, G::lesson, {Qt::Key_F}, tr("make a dropout on the simulated meter")},
        {A::open, G::window, {QKeySequence(Qt::CTRL | Qt::Key_O)}, tr("open a capture")},
        {A::saveElsewhere, G::window, {QKeySequence(Qt::CTRL | Qt::Key_S)}, tr("save the running capture elsewhere")},
        {A::night, G::window, {QKeySequence(Qt::CTRL | Qt::Key_D)}, tr("day or night")},
        {A::fullScreen, G::window, {Qt::Key_F11}, tr("full screen")},
        {A::keys, G::window, {Qt::Key_F1, Qt::Key_Question}, tr("this page")},
        {A::leave, G::window, {Qt::Key_Escape}, tr("back to the start page")},
        {A::quit, G::window, {QKeySequence(Qt::CTRL | Qt::Key_Q)}, tr("close the bench")},
    };
}

QString keyText(const KeyEntry& entry) {
    QStringList all;
    for (const QKeySequence& key : entry.keys) {
        // "+" and "=" are one key on many keyboards; naming one is enough.
        if (key == QKeySequence(Qt::Key_Equal)) continue;
        all << key.toString(QKeySequence::NativeText);
    }
    return all.join(tr(" or "));
}

} // namespace stillwire
