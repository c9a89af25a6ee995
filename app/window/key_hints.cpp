// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/key_hints.hpp"

#include <QPushButton>

namespace stillwire {

KeyHints::KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
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
        updateGeometry();
        place();
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

// Where each button goes in rows of `width`, and how high all the rows are.
std::pair<std::vector<QRect>, int> KeyHints::rowsAt(int width) const {
    std::vector<QRect> places;
    QPoint at;
    int row = 0;
    for (const QPushButton* button : buttons_) {
        const QSize size = button->sizeHint();
        if (at.x() > 0 && at.x() + size.width() > width) at = {0, at.y() + row};
        places.emplace_back(at, size);
        at.rx() += size.width();
        row = size.height();
    }
    return {places, at.y() + row};
}

void KeyHints::place() {
    const std::vector<QRect> places = rowsAt(width()).first;
    for (std::size_t i = 0; i < places.size(); ++i) buttons_[i]->setGeometry(places[i]);
}

int KeyHints::heightForWidth(int width) const { return rowsAt(width).second; }

QSize KeyHints::sizeHint() const { return {0, heightForWidth(width())}; }

void KeyHints::resizeEvent(QResizeEvent* event) {
    place();
    QWidget::resizeEvent(event);
}

} // namespace stillwire
