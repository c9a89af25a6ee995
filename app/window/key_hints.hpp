// SPDX-License-Identifier: GPL-3.0-or-later
// The few keys that matter on a page, at its foot; each can be pressed with the mouse too.
#pragma once

#include "app/window/keys.hpp"
#include "app/window/look.hpp"

#include <QWidget>

namespace stillwire {

struct Hint {
    KeyAction action;
    QString key, word;
};

class KeyHints : public QWidget {
    Q_OBJECT
public:
    KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent = nullptr);

signals:
    void pressed(stillwire::KeyAction action);
};

} // namespace stillwire
