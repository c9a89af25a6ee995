// SPDX-License-Identifier: GPL-3.0-or-later
// The one question that stands before anything that would end a run: what is lost, what is kept, and two answers. It
// lies over the bench, which goes on behind it.
#pragma once

#include "app/window/leave/at_stake.hpp"
#include "app/window/look/look.hpp"

#include <functional>

#include <QWidget>

class QBoxLayout;
class QVBoxLayout;

namespace stillwire {

class KeyButton;
class TextLabel;

class AskView : public QWidget {
    Q_OBJECT
public:
    explicit AskView(const Look& look, QWidget* parent);
    void ask(const QString& title, const AtStake& stake, std::function<void()> then);
    [[nodiscard]] bool asking() const { return !isHidden(); }
    void goOn(); // the run does; also when there is nothing left to ask
    void end();

signals:
    void saveElsewhereAsked();
    void answered();

protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override; // keeps what lies behind from being pressed

private:
    void restyle();

    const Look& look_;
    std::function<void()> then_;
    QWidget* card_;
    QVBoxLayout* column_;
    QBoxLayout* answers_;
    TextLabel *title_, *says_;
    KeyButton *goOn_, *end_, *save_;
};

} // namespace stillwire
