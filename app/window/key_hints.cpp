// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/key_hints.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {

KeyHints::KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent) : QWidget(parent) {
    constexpr int kInARow = 3;
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    QHBoxLayout* row = nullptr;
    int at = 0;
    for (const Hint& hint : hints) {
        auto* button = new QPushButton(QStringLiteral("%1  %2").arg(hint.key, hint.word), this);
        button->setFlat(true);
        button->setAutoDefault(true);
        button->setAccessibleName(QStringLiteral("%1, %2").arg(hint.word, hint.key));
        button->setProperty("hint", true);
        connect(button, &QPushButton::clicked, this, [this, action = hint.action] { emit pressed(action); });
        auto restyle = [&look, button] { button->setFont(look.font(TextSize::small)); };
        connect(&look, &Look::changed, button, restyle);
        restyle();
        if (at++ % kInARow == 0) {
            if (row) row->addStretch(1);
            rows->addLayout(row = new QHBoxLayout);
            row->setSpacing(0);
        }
        row->addWidget(button);
    }
    if (row) row->addStretch(1);
}

} // namespace stillwire
