// SPDX-License-Identifier: GPL-3.0-or-later
// The cautions of a step, before the step: one line or more each, behind the caution sign. A stop takes its place.
#pragma once

#include "app/window/look/paint.hpp"

#include <vector>

#include <QWidget>

namespace stillwire {

class CautionBox : public QWidget {
    Q_OBJECT
public:
    explicit CautionBox(const Look& look, QWidget* parent = nullptr);
    // Nothing to say hides it. What is not fresh was shown before, and is folded to a line.
    void show(const QStringList& cautions, const QStringList& fresh, bool stop);
    void setSize(TextSize size); // of the words, where there is more than one caution
    void keepRoomAt(int width);  // before it has that width
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void keepRoom();
    [[nodiscard]] QFont type() const;
    [[nodiscard]] std::vector<double> heights(double width) const;
    [[nodiscard]] double gap() const;
    [[nodiscard]] QRectF textArea(int width, int height) const;

    const Look& look_;
    QStringList cautions_; // as they stand in lines
    TextSize size_ = TextSize::small;
    bool stop_ = false;
};

} // namespace stillwire
