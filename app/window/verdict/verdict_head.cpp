// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/verdict_head.hpp"

#include "app/window/verdict/verdict_sign.hpp"
#include "app/window/words.hpp"

#include <QFontMetricsF>

namespace stillwire {
VerdictHead::VerdictHead(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Verdict"));
    hide();
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void VerdictHead::show(const Scene& scene) {
    const Verdict& verdict = scene.snapshot->findings->verdict;
    const auto [shape, colour] = signOf(verdict.decision);
    QString decision = decisionWords(verdict.decision);
    if (!decision.isEmpty()) decision[0] = decision[0].toUpper();
    const QString reason = verdict.reasons.empty() ? QString() : say(verdict.reasons.front().says);
    const QString condition = verdict.condition.empty() ? QString() : say(verdict.condition);
    if (decision == decision_ && condition == condition_ && reason == reason_ && shape == shape_) return;
    condition_ = condition;
    shape_ = shape;
    colour_ = colour;
    decision_ = decision;
    reason_ = reason;
    setAccessibleDescription(tr("Verdict: %1. %2").arg(verdictWords(verdict), reason_));
    update();
}

QSize VerdictHead::sizeHint() const { return {look_.ipx(760), look_.ipx(800.0 / 6 + 12)}; } // as the number

void VerdictHead::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double sign = look_.px(64), top = look_.px(6);
    drawShape(painter, QRectF(look_.px(6), top + look_.px(10), sign, sign), shape_, look_(colour_),
              look_.px(shape_ == Shape::caution ? 6.5 : 11));
    FittedText text(painter, *this);
    const double left = sign + look_.px(34);
    // As large as the words of the language let it be.
    double size = look_.px(52);
    while (size > look_.px(30) && QFontMetricsF(look_.digits(size)).horizontalAdvance(decision_) > width() - left)
        size *= 0.95;
    // Under a condition it makes room for it.
    const double high = look_.px(condition_.isEmpty() ? 84 : 58);
    if (!condition_.isEmpty())
        text.line(QRectF(left, top + high, width() - left, look_.px(30)), Qt::AlignLeft | Qt::AlignVCenter,
                  condition_, look_.font(TextSize::title, true), look_(Role::ink));
    text.line(QRectF(left, top, width() - left, high), Qt::AlignLeft | Qt::AlignVCenter, decision_,
              look_.digits(size), look_(colour_ == Role::quietText ? Role::ink : colour_));
    text.paragraph(QRectF(left, top + look_.px(88), width() - left, height() - top - look_.px(88)), reason_,
                   look_.font(TextSize::text), look_(Role::ink));
}

} // namespace stillwire
