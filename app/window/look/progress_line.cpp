// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/progress_line.hpp"

#include <algorithm>
#include <cmath>

#include <QPainter>

namespace stillwire {

ProgressLine::ProgressLine(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Progress of the step"));
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void ProgressLine::show(double share) {
    share = std::clamp(std::isfinite(share) ? share : 0.0, 0.0, 1.0);
    if (share == share_) return;
    share_ = share;
    setAccessibleDescription(tr("%1 %").arg(std::lround(100 * share_)));
    update();
}

QSize ProgressLine::sizeHint() const { return {look_.ipx(200), look_.ipx(11)}; }

void ProgressLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF all = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    const double round = all.height() / 2;
    painter.setPen(QPen(look_(Role::strongLine), 1));
    painter.setBrush(look_(Role::paper));
    painter.drawRoundedRect(all, round, round);
    if (share_ <= 0) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(look_(Role::trace));
    painter.drawRoundedRect(QRectF(all.left(), all.top(), std::max(all.height(), all.width() * share_), all.height()),
                            round, round);
}

} // namespace stillwire
