// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/keys.hpp"

#include <QCoreApplication>

namespace stillwire {
namespace {
struct KeyText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(KeyText)
};
// As it stands on the key.
QString named(const QKeySequence& key) {
    const QString plain = key.toString(QKeySequence::PortableText);
    if (plain.size() == 1) return plain;
    const std::pair<const char*, QString> names[] = {
        {"Space", KeyText::tr("Space")}, {"Backspace", KeyText::tr("Backspace")}, {"Left", KeyText::tr("Left")},
        {"Right", KeyText::tr("Right")}, {"Home", KeyText::tr("Home")},           {"End", KeyText::tr("End")},
        {"Esc", KeyText::tr("Esc")},     {"Shift", KeyText::tr("Shift")},         {"Ctrl", KeyText::tr("Ctrl")}};
    QStringList parts = plain.split(QLatin1Char('+'));
    for (QString& part : parts)
        for (const auto& [portable, name] : names)
            if (part == QLatin1String(portable)) {
                part = name;
                break;
            }
    return parts.join(QLatin1Char('+'));
}

} // namespace

std::vector<KeyEntry> keyTable() {
    using A = KeyAction;
    using G = KeyGroup;
    return {
        {A::next, G::hand, {Qt::Key_Space}, KeyText::tr("go on")},
        {A::back, G::hand, {Qt::Key_Backspace}, KeyText::tr("back, or this step again")},
        {A::skip, G::hand, {Qt::Key_S}, KeyText::tr("skip the step, not tested")},
        {A::choice1, G::hand, {Qt::Key_1}, KeyText::tr("first answer")},
        {A::choice2, G::hand, {Qt::Key_2}, KeyText::tr("second answer")},
        {A::choice3, G::hand, {Qt::Key_3}, KeyText::tr("third answer")},
        {A::choice4, G::hand, {Qt::Key_4}, KeyText::tr("fourth answer")},
        {A::turnIn, G::hand, {Qt::Key_T}, KeyText::tr("a part-turn made, one way")},
        {A::turnOut, G::hand, {QKeySequence(Qt::SHIFT | Qt::Key_T)}, KeyText::tr("a part-turn made, the other way")},
        {A::stop, G::hand, {QKeySequence(Qt::CTRL | Qt::Key_E)}, KeyText::tr("end the run here")},
        {A::far, G::hand, {Qt::Key_A}, KeyText::tr("large words for three metres, and back")},
        {A::mute, G::hand, {Qt::Key_M}, KeyText::tr("mute all, and sound again")},
        {A::hum, G::hand, {Qt::Key_V}, KeyText::tr("a tone that follows the voltage")},
        {A::aloud, G::hand, {Qt::Key_L}, KeyText::tr("speak the prompts, or only show them")},
        {A::scrollBack, G::wire, {Qt::Key_Left}, KeyText::tr("earlier")},
        {A::scrollOn, G::wire, {Qt::Key_Right}, KeyText::tr("later")},
        {A::zoomIn, G::wire, {Qt::Key_Plus, Qt::Key_Equal}, KeyText::tr("a shorter time on show")},
        {A::zoomOut, G::wire, {Qt::Key_Minus}, KeyText::tr("a longer time on show")},
        {A::showAll, G::wire, {Qt::Key_Home}, KeyText::tr("the whole session")},
        {A::followEnd, G::wire, {Qt::Key_End}, KeyText::tr("follow the newest reading")},
        {A::nextEvent, G::wire, {Qt::Key_Period}, KeyText::tr("to the next finding")},
        {A::previousEvent, G::wire, {Qt::Key_Comma}, KeyText::tr("to the finding before")},
        {A::allFindings, G::wire, {Qt::Key_E}, KeyText::tr("every finding as a list, and back")},
        {A::showFolder, G::wire, {Qt::Key_O}, KeyText::tr("show the capture in its folder")},
        {A::hideVerdict, G::lesson, {Qt::Key_H}, KeyText::tr("hide the verdict, and show it")},
        {A::coldWarm, G::lesson, {Qt::Key_C}, KeyText::tr("lay the warm wiggle over the cold one")},
        {A::strike, G::lesson, {Qt::Key_F}, KeyText::tr("make a dropout on the simulated meter")},
        {A::open, G::window, {QKeySequence(Qt::CTRL | Qt::Key_O)}, KeyText::tr("open a capture")},
        {A::saveElsewhere,
         G::window,
         {QKeySequence(Qt::CTRL | Qt::Key_S)},
         KeyText::tr("save the running capture elsewhere")},
        {A::night, G::window, {QKeySequence(Qt::CTRL | Qt::Key_D)}, KeyText::tr("day or night")},
        {A::settings, G::window, {QKeySequence(Qt::CTRL | Qt::Key_Comma)}, KeyText::tr("settings")},
        {A::fullScreen, G::window, {Qt::Key_F11}, KeyText::tr("full screen")},
        {A::keys, G::window, {Qt::Key_F1, Qt::Key_Question}, KeyText::tr("this page")},
        {A::leave, G::window, {Qt::Key_Escape}, KeyText::tr("back to the start page")},
        {A::quit, G::window, {QKeySequence(Qt::CTRL | Qt::Key_Q)}, KeyText::tr("close the bench")},
    };
}

QString keyName(KeyAction action) {
    for (const KeyEntry& entry : keyTable())
        if (entry.action == action) return named(entry.keys.front());
    return {};
}

QStringList keyNames(const KeyEntry& entry) {
    QStringList all;
    for (const QKeySequence& key : entry.keys) {
        // "+" and "=" are one key on many keyboards; naming one is enough.
        if (key == QKeySequence(Qt::Key_Equal)) continue;
        all << named(key);
    }
    return all;
}

} // namespace stillwire
