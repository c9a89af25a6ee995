// SPDX-License-Identifier: GPL-3.0-or-later
// The whole window says stop: over 5.5 V on the signal. Nothing else is to be looked at until the key is off.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/look.hpp"

#include <QWidget>

namespace stillwire {

class KeyButton;

class StopView : public QWidget {
    Q_OBJECT
public:
    explicit StopView(const Look& look, QWidget* parent = nullptr);
    void show(const Scene& scene); // hides itself when there is nothing to stop

signals:
    void keyIsOff();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void place();
    [[nodiscard]] double left() const; // of the words, beside the sign

    const Look& look_;
    KeyButton* off_;
    QString number_, why_, caution_;
};

} // namespace stillwire
