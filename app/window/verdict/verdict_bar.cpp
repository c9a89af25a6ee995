// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/verdict_bar.hpp"

#include <algorithm>

#include <QFontMetricsF>

namespace stillwire {

VerdictBar::VerdictBar(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("Verdict"));
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void VerdictBar::show(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Verdict& verdict = snapshot.findings->verdict;
    const bool over = snapshot.prompt.finished || snapshot.link == LinkState::ended;
    const QString lead = over ? tr("Verdict:") : tr("So far:");
    const QString decision = hidden_ ? tr("hidden") : verdictWords(verdict);
    QString reason = verdict.reasons.empty() ? QString() : say(verdict.reasons.front().says);
    if (hidden_) reason = tr("What would you do with this sensor? H shows it.");
    if (lead == lead_ && decision == decision_ && reason == reason_) return;
    lead_ = lead;
    decision_ = decision;
    reason_ = reason;
    setAccessibleDescription(QStringLiteral("%1 %2. %3").arg(lead_, decision_, reason_));
    updateGeometry();
    update();
}

void VerdictBar::hideWords(bool hidden) { hidden_ = hidden; }

namespace {
constexpr double kOneRow = 56, kTwoRows = 88, kPad = 20, kBeside = 260;
} // namespace

QSize VerdictBar::sizeHint() const { return {look_.ipx(480), heightForWidth(width())}; }

double VerdictBar::roomForReason(int width) const {
    const QFontMetricsF lead(look_.font(TextSize::text)), word(look_.font(TextSize::title, true));
    return width - look_.px(2 * kPad + 12 + 24) - lead.horizontalAdvance(lead_) - word.horizontalAdvance(decision_);
}

int VerdictBar::heightForWidth(int width) const {
    if (reason_.isEmpty()) return look_.ipx(kOneRow);
    const double room = roomForReason(width);
    const QFontMetricsF small(look_.font(TextSize::small));
    const bool fits =
        room > look_.px(kBeside) &&
        small.boundingRect(QRectF(0, 0, room, 1e4), Qt::TextWordWrap, reason_).height() < 2.5 * small.lineSpacing();
    return look_.ipx(fits ? kOneRow : kTwoRows);
}

void VerdictBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look_(Role::bar));
    painter.drawRoundedRect(QRectF(rect()), look_.px(8), look_.px(8));
    FittedText text(painter, *this);
    const double pad = look_.px(kPad);
    const bool two = height() > look_.px(kOneRow) + 1;
    const QRectF all = QRectF(rect()).adjusted(pad, 0, -pad, 0);
    QRectF top = all;
    if (two) top.setHeight(look_.px(42));
    const QRectF lead =
        text.line(top, Qt::AlignLeft | Qt::AlignVCenter, lead_, look_.font(TextSize::text), look_(Role::barQuiet));
    top.setLeft(lead.right() + look_.px(12));
    const QRectF word = text.line(top, Qt::AlignLeft | Qt::AlignVCenter, decision_, look_.font(TextSize::title, true),
                                  look_(Role::barText));
    if (reason_.isEmpty()) return;
    QRectF rest = all.adjusted(0, look_.px(4), 0, -look_.px(4));
    if (two)
        rest.setTop(look_.px(42));
    else
        rest.setLeft(std::max(word.right() + look_.px(24), lead.right() + look_.px(12)));
    // One line if it goes on one, a little smaller if need be; else two small ones.
    const QFont one = look_.font(TextSize::text);
    if (QFontMetricsF(one).horizontalAdvance(reason_) <= rest.width() * 1.18) {
        text.line(rest, Qt::AlignLeft | Qt::AlignVCenter, reason_, one, look_(Role::barQuiet));
        return;
    }
    const QFont small = look_.font(TextSize::small);
    const double need = QFontMetricsF(small).boundingRect(rest, Qt::TextWordWrap, reason_).height();
    rest.setTop(std::max(rest.top(), rest.center().y() - need / 2));
    text.paragraph(rest, reason_, small, look_(Role::barQuiet));
}

} // namespace stillwire
