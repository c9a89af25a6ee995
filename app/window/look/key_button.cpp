// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/key_button.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QFontMetricsF>
#include <QPainter>
#include <QStyleOptionButton>
#include <QStylePainter>

namespace stillwire {

double keyCapHeight(const Look& look) { return look.px(22); }

double drawKeyCaps(QPainter* painter, const Look& look, QPointF at, const QStringList& keys) {
    const QFont font = look.font(TextSize::small, true);
    const double height = keyCapHeight(look), gap = look.px(5);
    double x = at.x();
    for (const QString& key : keys) {
        const double width = std::max(height, QFontMetricsF(font).horizontalAdvance(key) + look.px(12));
        if (painter) {
            const QRectF cap(x + 0.5, at.y() - height / 2 + 0.5, width - 1, height - 1);
            painter->setPen(QPen(look(Role::strongLine), look.px(1)));
            painter->setBrush(look(Role::plot));
            painter->drawRoundedRect(cap, look.px(4), look.px(4));
            painter->setPen(look(Role::ink));
            painter->setFont(font);
            painter->drawText(cap, Qt::AlignCenter, key);
        }
        x += width + gap;
    }
    return keys.isEmpty() ? 0 : x - gap - at.x();
}

KeyButton::KeyButton(const Look& look, TextSize size, bool bare, QWidget* parent)
    : QPushButton(parent), look_(look), size_(size), bare_(bare) {
    setFlat(bare);
    setAutoDefault(true); // Enter presses it; Space is the bench's own
    auto restyle = [this] {
        setFont(look_.font(size_));
        updateGeometry();
        update();
    };
    connect(&look, &Look::changed, this, restyle);
    restyle();
}

void KeyButton::say(const QString& key, const QString& word) {
    if (key == key_ && word == word_) return;
    key_ = key;
    word_ = word;
    setText(QStringLiteral("%1  %2").arg(key, word));
    setAccessibleName(word);
    updateGeometry();
    update();
}

QSize KeyButton::sizeHint() const {
    const QFontMetricsF metrics(look_.font(size_));
    const double wide = 2 * side() + drawKeyCaps(nullptr, look_, {}, {key_}) + look_.px(bare_ ? 6 : 10) +
                        metrics.horizontalAdvance(word_);
    const double high = std::max(keyCapHeight(look_), metrics.height()) + look_.px(bare_ ? 8 : 16);
    return {static_cast<int>(std::ceil(wide)) + 1, static_cast<int>(std::ceil(high))};
}

void KeyButton::paintEvent(QPaintEvent*) {
    QStylePainter painter(this);
    QStyleOptionButton frame;
    initStyleOption(&frame);
    frame.text.clear();
    painter.drawControl(QStyle::CE_PushButton, frame);
    painter.setRenderHint(QPainter::Antialiasing);
    const double middle = height() / 2.0;
    double x = side();
    x += drawKeyCaps(&painter, look_, {x, middle}, {key_}) + look_.px(bare_ ? 6 : 10);
    painter.setFont(look_.font(size_));
    painter.setPen(look_(isDown() && !bare_ ? Role::plot : Role::ink));
    painter.drawText(QRectF(x, 0, width() - x, height()), Qt::AlignLeft | Qt::AlignVCenter, word_);
}

KeyCaps::KeyCaps(const Look& look, QStringList keys, QWidget* parent)
    : QWidget(parent), look_(look), keys_(std::move(keys)) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(keys_.join(QStringLiteral(", ")));
    connect(&look, &Look::changed, this, &QWidget::updateGeometry);
}

QSize KeyCaps::sizeHint() const {
    return {static_cast<int>(std::ceil(drawKeyCaps(nullptr, look_, {}, keys_))) + 1,
            static_cast<int>(std::ceil(keyCapHeight(look_)))};
}

void KeyCaps::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setOpacity(isEnabled() ? 1 : 0.5);
    drawKeyCaps(&painter, look_, {0, height() / 2.0}, keys_);
}

} // namespace stillwire
