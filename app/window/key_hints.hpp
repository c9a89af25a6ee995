// SPDX-License-Identifier: GPL-3.0-or-later
// The few keys that matter on a page, at its foot; each can be pressed with the mouse too.
#pragma once

#include "app/window/keys.hpp"
#include "app/window/look/look.hpp"

#include <utility>
#include <vector>

#include <QWidget>

namespace stillwire {

class KeyButton;

struct Hint {
    KeyAction action;
    QString word;
};

class KeyHints : public QWidget {
    Q_OBJECT
public:
    KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent = nullptr);

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] std::pair<std::vector<QRect>, int> rowsAt(int width) const; // as many in a row as there is room for
    void place();

    std::vector<KeyButton*> buttons_;
    int between_ = 0;

signals:
    void pressed(stillwire::KeyAction action);
};

} // namespace stillwire
