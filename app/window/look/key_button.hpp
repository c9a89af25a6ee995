// SPDX-License-Identifier: GPL-3.0-or-later
// A button that shows the key which presses it, as the cap of that key, and a word beside it.
#pragma once

#include "app/window/look/look.hpp"

#include <QPushButton>
#include <QStringList>

class QPainter;

namespace stillwire {

// Caps side by side, their left middle at `at`; returns the width they take. Without a painter only measures.
double drawKeyCaps(QPainter* painter, const Look& look, QPointF at, const QStringList& keys);
[[nodiscard]] double keyCapHeight(const Look& look);

class KeyButton : public QPushButton {
    Q_OBJECT
public:
    // Bare: no frame but the ring of the keyboard. Its accessible name is the word.
    KeyButton(const Look& look, TextSize size, bool bare, QWidget* parent);
    void say(const QString& key, const QString& word);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double side() const { return look_.px(bare_ ? 3 : size_ == TextSize::small ? 6 : 12); }

    const Look& look_;
    TextSize size_;
    bool bare_;
    QString key_, word_;
};

// The caps alone, for a list of keys.
class KeyCaps : public QWidget {
    Q_OBJECT
public:
    KeyCaps(const Look& look, QStringList keys, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    QStringList keys_;
};

} // namespace stillwire
