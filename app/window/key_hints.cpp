// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/key_hints.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QResizeEvent>
#include <QVBoxLayout>

namespace stillwire {

KeyHints::KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent) : QWidget(parent) {
    rows_ = new QVBoxLayout(this);
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setSpacing(0);
    for (const Hint& hint : hints) {
        const QString key = keyName(hint.action);
        auto* button = new QPushButton(QStringLiteral("%1  %2").arg(key, hint.word), this);
        button->setFlat(true);
        button->setAutoDefault(true);
        button->setAccessibleName(QStringLiteral("%1, %2").arg(hint.word, key));
        button->setProperty("hint", true);
        connect(button, &QPushButton::clicked, this, [this, action = hint.action] { emit pressed(action); });
        buttons_.push_back(button);
    }
    auto restyle = [this, &look] {
        for (QPushButton* button : buttons_) button->setFont(look.font(TextSize::small));
        arrange();
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

void KeyHints::arrange() {
    while (QLayoutItem* row = rows_->takeAt(0)) delete row; // the buttons stay, they are this widget's
    QHBoxLayout* row = nullptr;
    int used = 0;
    for (QPushButton* button : buttons_) {
        const int wide = button->sizeHint().width();
        if (row && used + wide > width()) {
            row->addStretch(1);
            row = nullptr;
        }
        if (!row) {
            rows_->addLayout(row = new QHBoxLayout);
            row->setSpacing(0);
            used = 0;
        }
        row->addWidget(button);
        used += wide;
    }
    if (row) row->addStretch(1);
}

int KeyHints::heightAt(int width) const {
    int rows = 1, used = 0;
    for (const QPushButton* button : buttons_) {
        const int wide = button->sizeHint().width();
        if (used > 0 && used + wide > width) {
            ++rows;
            used = 0;
        }
        used += wide;
    }
    return buttons_.empty() ? 0 : rows * buttons_.front()->sizeHint().height();
}

void KeyHints::resizeEvent(QResizeEvent* event) {
    // Later: the page that gives the width is in the middle of laying out, and would miss another height.
    if (event->size().width() != event->oldSize().width())
        QMetaObject::invokeMethod(this, &KeyHints::arrange, Qt::QueuedConnection);
    QWidget::resizeEvent(event);
}

} // namespace stillwire
