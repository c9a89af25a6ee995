// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/pace_view.hpp"

#include "app/window/words.hpp"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPaintEvent>

namespace stillwire {

PaceView::PaceView(const Look& look, const Feed& feed, QWidget* parent) : QWidget(parent), look_(look), feed_(feed) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Pace"));
    setAttribute(Qt::WA_OpaquePaintEvent); // nothing is painted behind it
    const auto pace = [this] {
        motion_.setInterval(look_.calm() ? 1000 : 150);
    }; // calm: once a second, to where it is
    pace();
    connect(&look, &Look::changed, this, pace);
    connect(&motion_, &QTimer::timeout, this, &PaceView::advance);
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void PaceView::show(const Prompt& prompt) {
    const QString word = say(prompt.pose);
    const AskedPose pose = prompt.asked.value_or(AskedPose{});
    const double duration = pose.for_s, since = toSeconds(pose.since);
    if (word == word_ && duration == for_s_ && since == since_s_) return;
    word_ = word;
    for_s_ = duration;
    since_s_ = since;
    setAccessibleDescription(word_);
    if (for_s_ > 0)
        motion_.start();
    else
        motion_.stop();
    update();
}

QSize PaceView::sizeHint() const { return {look_.ipx(316), look_.ipx(82)}; }

double PaceView::beadX() const {
    const double left = look_.px(24), right = width() - left;
    if (!(for_s_ > 0)) return left;
    return left + (right - left) * std::clamp(feed_.nowSeconds() - since_s_, 0.0, for_s_) / for_s_;
}

// Only the bead moves: what it leaves and where it comes to.
void PaceView::advance() {
    const double x = beadX(), reach = look_.px(12);
    if (std::abs(x - shown_x_) < 1) return;
    const double from = std::min(x, shown_x_) - reach, to = std::max(x, shown_x_) + reach;
    update(QRectF(from, height() - look_.px(30), to - from, look_.px(24)).toAlignedRect());
}

void PaceView::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double pad = look_.px(16), y = height() - look_.px(18), left = look_.px(24), right = width() - left;
    const bool whole = event->rect().top() < height() - look_.px(31);
    if (whole) {
        painter.fillRect(rect(), look_(Role::page));
        painter.setPen(QPen(look_(Role::line), 1));
        painter.setBrush(look_(Role::paper));
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look_.px(8), look_.px(8));
        FittedText text(painter, *this);
        // The word changes with every pose and is read from the sensor, with both hands busy.
        const QRectF top(pad, look_.px(6), width() - 2 * pad, look_.px(44));
        const double timeWidth = look_.px(64);
        const QRectF place = top.adjusted(0, 0, -timeWidth, 0);
        const bool large =
            QFontMetricsF(look_.font(TextSize::word, true)).horizontalAdvance(word_) < place.width() * 1.2;
        text.line(place, Qt::AlignLeft | Qt::AlignVCenter, word_,
                  look_.font(large ? TextSize::word : TextSize::title, true), look_(Role::trace));
        if (for_s_ > 0)
            text.line(top, Qt::AlignRight | Qt::AlignVCenter, QString::fromStdString(plain(for_s_, 1)) + tr(" s"),
                      look_.font(TextSize::title), look_(Role::ink));
    } else {
        painter.fillRect(event->rect(), look_(Role::paper));
    }
    painter.setPen(QPen(look_(Role::strongLine), look_.px(2)));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (int i = 0; i <= 4; ++i) {
        const double x = left + (right - left) * i / 4;
        painter.drawLine(QPointF(x, y - look_.px(7)), QPointF(x, y + look_.px(7)));
    }
    shown_x_ = beadX();
    if (!(for_s_ > 0)) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(look_(Role::trace));
    painter.drawEllipse(QPointF(shown_x_, y), look_.px(10), look_.px(10));
}

} // namespace stillwire
