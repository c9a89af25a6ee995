// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/stop_view.hpp"

#include "app/window/keys.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/paint.hpp"
#include "app/window/words.hpp"

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

void StopView::place() {
    off_->resize(off_->sizeHint());
    off_->move(look_.ipx(520), height() - look_.ipx(60) - off_->height());
    update();
}

void StopView::resizeEvent(QResizeEvent*) { place(); }

void StopView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::faultBack));
    const double edge = look_.px(14);
    painter.setPen(QPen(look_(Role::fault), edge));
    painter.drawRect(QRectF(rect()).adjusted(edge / 2, edge / 2, -edge / 2, -edge / 2));
    drawShape(painter, QRectF(look_.px(80), height() / 2.0 - look_.px(180), look_.px(360), look_.px(360)),
              Shape::stop, look_(Role::fault), look_.px(34));
    FittedText text(painter, *this);
    const double left = look_.px(520), wide = width() - left - look_.px(60);
    // As large as the words of the language let it be.
    double size = look_.px(96);
    while (size > look_.px(48) && QFontMetricsF(look_.digits(size)).horizontalAdvance(tr("Key off now")) > wide)
        size *= 0.95;
    const QFont huge = look_.digits(size);
    text.line(QRectF(left, look_.px(110), wide, look_.px(150)), Qt::AlignLeft | Qt::AlignVCenter, tr("Key off now"),
              huge, look_(Role::fault));
    text.line(QRectF(left, look_.px(270), wide, look_.px(110)), Qt::AlignLeft | Qt::AlignVCenter,
              number_ + QStringLiteral(" V"), look_.digits(look_.px(72)), look_(Role::ink));
    QRectF rest(left, look_.px(400), wide, look_.px(200));
    for (const QString& words : {tr("Over 5.5 V on the signal."), why_, caution_}) {
        const QRectF covered = text.paragraph(rest, words, look_.font(TextSize::title), look_(Role::ink));
        rest.setTop(covered.bottom() + look_.px(12));
    }
}

} // namespace stillwire
