// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/keys_page.hpp"

#include "app/window/look/key_button.hpp"
#include "app/window/look/text_label.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QScrollArea>
#include <QVBoxLayout>

namespace stillwire {

KeysPage::KeysPage(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    auto* title = new TextLabel(look, TextSize::word, true, Role::ink, this);
    title->say(tr("Every key"));
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::StrongFocus); // the keyboard scrolls it too
    scroll->setAccessibleName(tr("Every key"));
    list_ = new QWidget;
    scroll->setWidget(list_);
    auto* groups = new QHBoxLayout(list_);
    groups->setContentsMargins(0, 0, 0, 0);
    auto* left = new QVBoxLayout;
    left->addWidget(group(KeyGroup::hand, tr("The hand, in a led run")));
    left->addWidget(group(KeyGroup::lesson, tr("For a class, on the bench")));
    left->addStretch(1);
    groups->addLayout(left, 1);
    auto* right = new QVBoxLayout;
    right->addWidget(group(KeyGroup::wire, tr("The wire, on the bench")));
    right->addWidget(group(KeyGroup::window, tr("The window, everywhere")));
    right->addStretch(1);
    groups->addLayout(right, 1);
    auto* back = new KeyButton(look, TextSize::text, false, this);
    back->say(keyName(KeyAction::leave), tr("back"));
    connect(back, &QPushButton::clicked, this, &KeysPage::done);
    auto* column = new QVBoxLayout(this);
    column->addWidget(title);
    column->addWidget(scroll, 1);
    column->addWidget(back, 0, Qt::AlignLeft);
    auto restyle = [this, column, groups] {
        const int edge = look_.ipx(40);
        column->setContentsMargins(edge, look_.ipx(24), edge, look_.ipx(20));
        column->setSpacing(look_.ipx(16));
        groups->setSpacing(look_.ipx(48));
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

QWidget* KeysPage::group(KeyGroup group, const QString& title) {
    auto* box = new QWidget(list_);
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    auto* heading = new TextLabel(look_, TextSize::title, true, Role::ink, box);
    heading->say(title);
    grid->addWidget(heading, 0, 0, 1, 2);
    int row = 1;
    const auto add = [&](const QStringList& keys, const QString& words) {
        auto* key = new KeyCaps(look_, keys, box);
        auto* says = new TextLabel(look_, TextSize::text, false, Role::ink, box);
        says->say(words);
        grid->addWidget(key, row, 0, Qt::AlignLeft);
        grid->addWidget(says, row, 1);
        ++row;
    };
    for (const KeyEntry& entry : keyTable())
        if (entry.group == group) add(keyNames(entry), entry.says);
    if (group == KeyGroup::wire) { // the mouse has its ways too, on the trace
        add({tr("Wheel")}, tr("earlier, later"));
        add({tr("Ctrl+Wheel")}, tr("a shorter or longer time on show"));
        add({tr("Drag")}, tr("the trace along its time"));
    }
    if (group != KeyGroup::window) onBench_.push_back(box);
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(row, 1);
    auto restyle = [this, grid] {
        grid->setHorizontalSpacing(look_.ipx(20));
        grid->setVerticalSpacing(look_.ipx(6));
        grid->setColumnMinimumWidth(0, look_.ipx(92)); // the words of every group begin at one line
    };
    connect(&look_, &Look::changed, grid, restyle);
    restyle();
    return box;
}

void KeysPage::showFor(bool bench) {
    for (QWidget* group : onBench_) group->setEnabled(bench); // where they do not work they stand back
}

void KeysPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
}

} // namespace stillwire
