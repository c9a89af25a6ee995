// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/stop_view.hpp"

#include "app/window/keys.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/paint.hpp"
#include "app/window/words.hpp"

#include <algorithm>

#include <QFontMetricsF>

namespace stillwire {

StopView::StopView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Stop"));
    off_ = new KeyButton(look, TextSize::title, false, this);
    off_->say(keyName(KeyAction::next), tr("the key is off"));
    connect(off_, &QPushButton::clicked, this, &StopView::keyIsOff);
    connect(&look, &Look::changed, this, &StopView::place);
    hide();
}

void StopView::show(const Scene& scene) {
    const Prompt& prompt = scene.snapshot->prompt;
    const bool stop = scene.snapshot->guided && prompt.stopNow;
    if (stop) {
        number_ = numberText(scene.snapshot->lastVolts_V, scene.snapshot->findings->meter.resolution_V);
        why_ = say(prompt.why);
        caution_ = prompt.cautions.empty() ? QString() : say(prompt.cautions.front());
        setAccessibleDescription(
            QStringList{tr("Key off now"), say(prompt.instruction), why_, caution_}.join(QLatin1Char(' ')));
        update();
    }
    if (stop != isHidden()) return;
    if (!stop && off_->hasFocus()) parentWidget()->setFocus(); // and not to the next that Tab would find
    setVisible(stop);
    if (!stop) return;
    raise();
    place();
    off_->setFocus();
}

double StopView::left() const { return std::min(look_.px(520), width() * 0.36); }

void StopView::place() {
    off_->resize(off_->sizeHint());
    off_->move(qRound(left()), height() - look_.ipx(60) - off_->height());
    update();
}

void StopView::resizeEvent(QResizeEvent*) { place(); }

void StopView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::faultBack));
    const double edge = look_.px(14);
    painter.setPen(QPen(look_(Role::fault), edge));
    painter.drawRect(QRectF(rect()).adjusted(edge / 2, edge / 2, -edge / 2, -edge / 2));
    const double sign = left() - look_.px(120);
    drawShape(painter, QRectF(look_.px(60), (height() - sign) / 2, sign, sign), Shape::stop, look_(Role::fault),
              sign * 0.09);
    FittedText text(painter, *this);
    const double left = this->left(), wide = width() - left - look_.px(60);
    // As large as the words of the language let it be.
    double size = look_.px(96);
    while (size > look_.px(40) && QFontMetricsF(look_.digits(size)).horizontalAdvance(tr("Key off now")) > wide)
        size *= 0.95;
    const QFont huge = look_.digits(size);
    text.line(QRectF(left, height() * 0.12, wide, look_.px(130)), Qt::AlignLeft | Qt::AlignVCenter, tr("Key off now"),
              huge, look_(Role::fault));
    text.line(QRectF(left, height() * 0.12 + look_.px(120), wide, look_.px(110)), Qt::AlignLeft | Qt::AlignVCenter,
              number_ + QStringLiteral(" V"), look_.digits(look_.px(72)), look_(Role::ink));
    QRectF rest(left, height() * 0.12 + look_.px(230), wide, height() * 0.88 - look_.px(340));
    for (const QString& words : {tr("Over 5.5 V on the signal."), why_, caution_}) {
        const QRectF covered = text.paragraph(rest, words, look_.font(TextSize::title), look_(Role::ink));
        rest.setTop(covered.bottom() + look_.px(12));
    }
}

} // namespace stillwire
