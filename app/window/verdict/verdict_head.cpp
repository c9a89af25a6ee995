// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/verdict_head.hpp"

#include "app/window/verdict/verdict_sign.hpp"
#include "app/window/words.hpp"

#include <QFontMetricsF>

namespace stillwire {
namespace {

// As the state of the wire has them: told apart across the shop by lightness alone.
struct Ground {
    Role back, words;
};
Ground groundOf(Role colour) {
    if (colour == Role::fault) return {Role::loud, Role::loudText};
    if (colour == Role::caution) return {Role::mid, Role::midText};
    return {Role::plot, Role::ink};
}

} // namespace

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
    const auto [back, words] = groundOf(colour_);
    painter.setPen(QPen(look_(Role::line), 1));
    painter.setBrush(look_(back));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look_.px(8), look_.px(8));
    const double sign = look_.px(64), top = look_.px(6), edge = look_.px(16);
    const Role ink = back == Role::plot ? colour_ : words;
    drawShape(painter, QRectF(edge, top + look_.px(10), sign, sign), shape_, look_(ink),
              look_.px(shape_ == Shape::caution ? 6.5 : 11));
    FittedText text(painter, *this);
    const double left = edge + sign + look_.px(24), right = width() - edge;
    // As large as the words of the language let it be.
    double size = look_.px(52);
    while (size > look_.px(30) && QFontMetricsF(look_.digits(size)).horizontalAdvance(decision_) > right - left)
        size *= 0.95;
    // Under a condition it makes room for it.
    const double high = look_.px(condition_.isEmpty() ? 84 : 58);
    if (!condition_.isEmpty())
        text.line(QRectF(left, top + high, right - left, look_.px(30)), Qt::AlignLeft | Qt::AlignVCenter, condition_,
                  look_.font(TextSize::title, true), look_(words));
    text.line(QRectF(left, top, right - left, high), Qt::AlignLeft | Qt::AlignVCenter, decision_, look_.digits(size),
              look_(ink == Role::quietText ? Role::ink : ink));
    text.paragraph(QRectF(left, top + look_.px(88), right - left, height() - top - look_.px(88)), reason_,
                   look_.font(TextSize::text), look_(words));
}

} // namespace stillwire
