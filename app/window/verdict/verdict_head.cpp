// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/verdict_head.hpp"

#include "app/window/words.hpp"

namespace stillwire {
namespace {

// A sign of its own for each kind of verdict: done, turn it, out with it, look elsewhere first, not known.
std::pair<Shape, Role> signOf(Decision decision) {
    switch (decision) {
    case Decision::keep: return {Shape::tick, Role::good};
    case Decision::adjust: return {Shape::slope, Role::caution};
    case Decision::replace: return {Shape::cross, Role::fault};
    case Decision::cannotTell: return {Shape::dots, Role::quietText};
    default: break;
    }
    return {Shape::caution, Role::caution};
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
    const QString reason = verdict.reasons.empty() ? QString() : say(verdict.reasons.front());
    if (decision == decision_ && reason == reason_ && shape == shape_) return;
    shape_ = shape;
    colour_ = colour;
    decision_ = decision;
    reason_ = reason;
    setAccessibleDescription(tr("Verdict: %1. %2").arg(decisionWords(verdict.decision), reason_));
    update();
}

QSize VerdictHead::sizeHint() const { return {look_.ipx(760), look_.ipx(800.0 / 6 + 12)}; } // as the number

void VerdictHead::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double sign = look_.px(64), top = look_.px(6);
    drawShape(painter, QRectF(look_.px(6), top + look_.px(10), sign, sign), shape_, look_(colour_), look_.px(11));
    FittedText text(painter, *this);
    const double left = sign + look_.px(34);
    text.line(QRectF(left, top, width() - left, look_.px(84)), Qt::AlignLeft | Qt::AlignVCenter, decision_,
              look_.digits(look_.px(52)), look_(colour_ == Role::quietText ? Role::ink : colour_));
    text.paragraph(QRectF(left, top + look_.px(88), width() - left, height() - top - look_.px(88)), reason_,
                   look_.font(TextSize::text), look_(Role::ink));
}

} // namespace stillwire
