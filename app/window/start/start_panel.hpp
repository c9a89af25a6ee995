// SPDX-License-Identifier: GPL-3.0-or-later
// One part of the start page under a line of its own: a heading, what it is for, and rows of choices, each under its
// name, with a button at their end.
#pragma once

#include "app/window/look/look.hpp"

#include <vector>

#include <QMap>
#include <QWidget>

class QGridLayout;
class QHBoxLayout;
class QPushButton;

namespace stillwire {

class ChoiceBox;
class TextLabel;

class StartPanel : public QWidget {
    Q_OBJECT
public:
    StartPanel(const Look& look, const QString& title, const QString& text, QWidget* parent);

    void addNote(QWidget* note);                                           // over the rows
    void addRow(ChoiceBox* first, ChoiceBox* second, QPushButton* button); // any may be none
    void addBeside(ChoiceBox* choice, QPushButton* button);                // in the heading's row
    void addWhole(QWidget* widget);                                        // below the rows
    void setRowVisible(ChoiceBox* choice, bool visible);                   // with its name
    void setShape(int buttons, bool narrow);                               // one column of buttons down the page

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Row {
        ChoiceBox *first, *second;
        QPushButton* button;
    };
    void name(ChoiceBox* choice);
    void lay(); // the rows, by the shape
    void put(QWidget* widget, int row, int column, int columns);

    const Look& look_;
    QGridLayout* grid_;
    QHBoxLayout* top_;
    TextLabel* says_;
    QMap<ChoiceBox*, TextLabel*> names_;
    std::vector<Row> rows_;
    std::vector<QWidget*> notes_, wholes_; // over the rows, and below them
    bool narrow_ = false;
};

} // namespace stillwire
