// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_panel.hpp"

#include "app/window/look/choice_box.hpp"
#include "app/window/look/text_label.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>

namespace stillwire {
namespace {
constexpr int kButtons = 2, kColumns = 3;
} // namespace

StartPanel::StartPanel(const Look& look, const QString& title, const QString& text, QWidget* parent)
    : QWidget(parent), look_(look), grid_(new QGridLayout(this)), top_(new QHBoxLayout) {
    auto* heading = new TextLabel(look, TextSize::title, true, Role::ink, this);
    heading->setWordWrap(false);
    heading->say(title);
    says_ = new TextLabel(look, TextSize::small, false, Role::quietText, this);
    says_->say(text);
    top_->addWidget(heading, 0, Qt::AlignBottom);
    top_->addWidget(says_, 1, Qt::AlignBottom);
    grid_->addLayout(top_, 0, 0, 1, kColumns);
    grid_->setColumnStretch(0, 8);
    grid_->setColumnStretch(1, 7);
    auto restyle = [this] {
        grid_->setContentsMargins(0, look_.ipx(8), 0, 0);
        grid_->setHorizontalSpacing(look_.ipx(14));
        grid_->setVerticalSpacing(look_.ipx(3));
        top_->setSpacing(look_.ipx(14));
        says_->setContentsMargins(0, 0, 0, look_.ipx(3)); // on the heading's base line
        update();
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

void StartPanel::addNote(QWidget* note) {
    notes_.push_back(note);
    lay();
}

void StartPanel::name(ChoiceBox* choice) {
    if (choice == nullptr) return;
    auto* name = new TextLabel(look_, TextSize::small, true, Role::ink, this);
    name->say(choice->accessibleName());
    name->setBuddy(choice);
    names_[choice] = name;
}

void StartPanel::addRow(ChoiceBox* first, ChoiceBox* second, QPushButton* button) {
    name(first);
    name(second);
    rows_.push_back({first, second, button});
    lay();
}

void StartPanel::put(QWidget* widget, int row, int column, int columns) {
    if (widget != nullptr) grid_->addWidget(widget, row, column, 1, columns);
}

// Side by side where there is room, else one under the other: what is chosen is read whole.
void StartPanel::lay() {
    while (grid_->count() > 1) delete grid_->takeAt(1); // places, not widgets; the heading stays
    int row = 1;
    for (QWidget* note : notes_) put(note, row++, 0, kColumns);
    for (const Row& r : rows_) {
        const int secondColumn = narrow_ ? 0 : 1, wide = narrow_ ? 2 : 1;
        int secondRow = row;
        put(names_.value(r.first), row, 0, wide);
        put(r.first, row + 1, 0, wide);
        put(r.button, row + 1, kButtons, 1);
        if (narrow_ && r.first != nullptr) secondRow = row + 2;
        put(names_.value(r.second), secondRow, secondColumn, wide);
        put(r.second, secondRow + 1, secondColumn, wide);
        row = secondRow + 2;
    }
    for (QWidget* whole : wholes_) put(whole, row++, 0, kColumns);
}

void StartPanel::addBeside(ChoiceBox* choice, QPushButton* button) {
    top_->addWidget(choice);
    top_->addWidget(button);
}

void StartPanel::addWhole(QWidget* widget) {
    wholes_.push_back(widget);
    lay();
}

void StartPanel::setRowVisible(ChoiceBox* choice, bool visible) {
    choice->setVisible(visible);
    names_.value(choice)->setVisible(visible);
}

void StartPanel::setShape(int buttons, bool narrow) {
    grid_->setColumnMinimumWidth(kButtons, buttons);
    if (narrow == narrow_) return;
    narrow_ = narrow;
    says_->setVisible(!narrow); // the headings and the names of the choices have to do
    lay();
}

void StartPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(QPen(look_(Role::line), 1));
    painter.drawLine(0, 0, width(), 0);
}

} // namespace stillwire
