// SPDX-License-Identifier: GPL-3.0-or-later
// One part of the start page under a line of its own: a heading, what it is for, and rows of choices with a button at
// their end.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

class QComboBox;
class QGridLayout;
class QHBoxLayout;

namespace stillwire {

class StartPanel : public QWidget {
    Q_OBJECT
public:
    // `whole`: the heading has its row to itself; else it shares it with what stands in the other two columns.
    StartPanel(const Look& look, const QString& title, const QString& text, bool whole, QWidget* parent);

    void addChoice(QComboBox* box, int column); // with its accessible name as a label over it
    void setButtonWidth(int width);             // one column of buttons down the page
    [[nodiscard]] QGridLayout& grid() { return *grid_; }

    static constexpr int kFirstRow = 2, kSecondRow = 3, kNoteRow = 4; // of the grid, below labels

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    QGridLayout* grid_;
    QHBoxLayout* top_;
};

} // namespace stillwire
