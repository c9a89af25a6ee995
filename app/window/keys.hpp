// SPDX-License-Identifier: GPL-3.0-or-later
// Every key of the window in one table: what it is, what it is for. The page of keys is made from it.
#pragma once

#include <vector>

#include <QKeySequence>
#include <QString>
#include <QStringList>

namespace stillwire {

enum class KeyAction {
    next,
    back,
    skip,
    stop,
    turnIn,
    turnOut,
    choice1,
    choice2,
    choice3,
    choice4,
    mute,
    hum,
    aloud,
    far,
    hideVerdict,
    coldWarm,
    allFindings,
    showFolder,
    strike,
    zoomIn,
    zoomOut,
    scrollBack,
    scrollOn,
    followEnd,
    showAll,
    nextEvent,
    previousEvent,
    keys,
    open,
    saveElsewhere,
    settings,
    night,
    fullScreen,
    leave,
    quit,
};

enum class KeyGroup { hand, wire, lesson, window };

struct KeyEntry {
    KeyAction action;
    KeyGroup group;
    std::vector<QKeySequence> keys;
    QString says;
};

[[nodiscard]] std::vector<KeyEntry> keyTable();
[[nodiscard]] QString keyName(KeyAction action);           // of its first key: "Space"
[[nodiscard]] QStringList keyNames(const KeyEntry& entry); // "F1", "?"

} // namespace stillwire
