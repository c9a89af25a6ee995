// SPDX-License-Identifier: GPL-3.0-or-later
// The cautions of a step, before the step: one line or more each, behind the caution sign. A stop takes its place.
#pragma once

#include "app/window/look/paint.hpp"

#include <QWidget>

namespace stillwire {

class CautionBox : public QWidget {
    Q_OBJECT
public:
    explicit CautionBox(const Look& look, QWidget* parent = nullptr);
    void show(const QStringList& cautions, bool stop); // nothing to say hides it
    void keepRoomAt(int width);                        // before it has that width
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] QString text() const;
    void keepRoom();
    [[nodiscard]] QFont type() const;
    [[nodiscard]] QRectF textArea(int width, int height) const;

    const Look& look_;
    QStringList cautions_;
    bool stop_ = false;
};

} // namespace stillwire
