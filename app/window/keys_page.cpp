// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/keys_page.hpp"

#include "app/window/look/text_label.hpp"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {

KeysPage::KeysPage(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    auto* title = new TextLabel(look, TextSize::word, true, Role::ink, this);
    title->say(tr("Every key"));
    auto* groups = new QHBoxLayout;
    auto* left = new QVBoxLayout;
    left->addWidget(group(KeyGroup::hand, tr("The hand")));
    left->addWidget(group(KeyGroup::lesson, tr("For a class")));
    left->addStretch(1);
    groups->addLayout(left, 1);
    auto* right = new QVBoxLayout;
    right->addWidget(group(KeyGroup::wire, tr("The wire")));
    right->addWidget(group(KeyGroup::window, tr("The window")));
    right->addStretch(1);
    groups->addLayout(right, 1);
    auto* back = new QPushButton(tr("Esc  back"), this);
    back->setAccessibleName(tr("Back"));
    back->setAutoDefault(true);
    connect(back, &QPushButton::clicked, this, &KeysPage::done);
    auto* column = new QVBoxLayout(this);
    column->addWidget(title);
    column->addLayout(groups, 1);
    column->addWidget(back, 0, Qt::AlignLeft);
    auto restyle = [this, column, groups, back] {
        const int edge = look_.ipx(40);
        column->setContentsMargins(edge, edge, edge, look_.ipx(24));
        column->setSpacing(look_.ipx(16));
        groups->setSpacing(look_.ipx(48));
        back->setFont(look_.font(TextSize::text));
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

QWidget* KeysPage::group(KeyGroup group, const QString& title) {
    auto* box = new QWidget(this);
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    auto* heading = new TextLabel(look_, TextSize::title, true, Role::ink, box);
    heading->say(title);
    grid->addWidget(heading, 0, 0, 1, 2);
    int row = 1;
    for (const KeyEntry& entry : keyTable()) {
        if (entry.group != group) continue;
        auto* key = new TextLabel(look_, TextSize::text, true, Role::trace, box);
        key->setWordWrap(false);
        key->say(keyText(entry));
        auto* says = new TextLabel(look_, TextSize::text, false, Role::ink, box);
        says->say(entry.says);
        grid->addWidget(key, row, 0, Qt::AlignTop);
        grid->addWidget(says, row, 1);
        ++row;
    }
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(row, 1);
    auto restyle = [this, grid] {
        grid->setHorizontalSpacing(look_.ipx(20));
        grid->setVerticalSpacing(look_.ipx(7));
    };
    connect(&look_, &Look::changed, grid, restyle);
    restyle();
    return box;
}

void KeysPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
}

} // namespace stillwire
