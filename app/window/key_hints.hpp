// SPDX-License-Identifier: GPL-3.0-or-later
// The few keys that matter on a page, at its foot; each can be pressed with the mouse too.
#pragma once

#include "app/window/keys.hpp"
#include "app/window/look.hpp"

#include <QWidget>

class QPushButton;
class QVBoxLayout;

namespace stillwire {

struct Hint {
    KeyAction action;
    QString word;
};

class KeyHints : public QWidget {
    Q_OBJECT
public:
    KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent = nullptr);

    [[nodiscard]] int heightAt(int width) const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void arrange(); // as many in a row as the width has room for

    std::vector<QPushButton*> buttons_;
    QVBoxLayout* rows_;

signals:
    void pressed(stillwire::KeyAction action);
};

} // namespace stillwire
