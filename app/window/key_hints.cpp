// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/key_hints.hpp"

#include "app/window/look/key_button.hpp"

namespace stillwire {

KeyHints::KeyHints(const Look& look, const std::vector<Hint>& hints, QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    for (const Hint& hint : hints) {
        auto* button = new KeyButton(look, TextSize::small, false, this);
        button->say(keyName(hint.action), hint.word);
        connect(button, &QPushButton::clicked, this, [this, action = hint.action] { emit pressed(action); });
        buttons_.push_back(button);
    }
    auto restyle = [this, &look] {
        between_ = look.ipx(4);
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
    for (const KeyButton* button : buttons_) {
        const QSize size = button->sizeHint();
        if (at.x() > 0 && at.x() + size.width() > width) at = {0, at.y() + row + between_};
        places.emplace_back(at, size);
        at.rx() += size.width() + between_;
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
