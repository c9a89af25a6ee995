// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/far/far_view.hpp"

#include "app/window/wire/readout_view.hpp"
#include "app/window/words.hpp"

#include <algorithm>

#include <QFontMetricsF>

namespace stillwire {
namespace {

constexpr double kEdge = 0.022, kHead = 0.30, kSmallHead = 0.2; // shares of the height
constexpr double kPitch = 1.72;                                 // from line to line, in capitals

} // namespace

FarView::FarView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("From three metres"));
    readout_ = new ReadoutView(look, this);
    readout_->setFar(true);
    connect(&look, &Look::changed, this, [this] {
        place();
        update();
    });
    hide();
}

void FarView::setShown(bool shown) {
    if (shown == !isHidden()) return;
    setVisible(shown);
    if (shown) raise();
}

void FarView::show(const Scene& scene, const CautionMemory& cautions, const QString& trouble, bool verdictHidden) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Prompt& prompt = snapshot.prompt;
    Words words;
    words.instruction = farInstruction(prompt);
    words.cautions = cautions.fresh();
    words.stop = prompt.stopNow;
    words.pose = say(prompt.pose);
    words.wanted = say(prompt.wanted);
    words.lead = prompt.finished ? tr("Verdict") : tr("So far");
    words.verdict = (verdictHidden ? tr("hidden") : decisionWords(snapshot.findings->verdict.decision)).toUpper();
    const auto before = cautions.all().size() - cautions.fresh().size();
    if (before > 0 && words.cautions.isEmpty()) words.folded = tr("Cautions as before: %1").arg(before);
    if (!trouble.isEmpty()) words.folded = trouble;
    readout_->show(scene);
    if (words == words_) return;
    words_ = words;
    setAccessibleDescription((QStringList{words_.instruction.join(QLatin1Char(' ')), words_.pose, words_.wanted,
                                          words_.lead + QLatin1Char(' ') + words_.verdict} +
                              cautions.all())
                                 .join(QStringLiteral(". ")));
    place();
    update();
}

void FarView::place() {
    const int edge = qRound(height() * kEdge);
    const double head = words_.cautions.isEmpty() ? kHead : kSmallHead;
    readout_->setGeometry(edge, edge, width() - 2 * edge, qRound(height() * head) - edge);
}

void FarView::resizeEvent(QResizeEvent*) { place(); }
void FarView::mousePressEvent(QMouseEvent*) { emit near(); }

// One line of capitals or of words as high; returns where the next begins.
double FarView::line(FittedText& text, double y, const QString& words, Role role) {
    const double edge = height() * kEdge, pitch = capitals() * kPitch;
    text.line(QRectF(edge, y, width() - 2 * edge, pitch), Qt::AlignLeft | Qt::AlignVCenter, words,
              look_.digits(capitals()), look_(role));
    return y + pitch;
}

void FarView::paintCautions(QPainter& painter, FittedText& text, const QRectF& box) {
    painter.setPen(QPen(look_(words_.stop ? Role::fault : Role::caution), look_.px(4)));
    painter.setBrush(look_(words_.stop ? Role::faultBack : Role::cautionBack));
    painter.drawRoundedRect(box, look_.px(8), look_.px(8));
    const double sign = std::min(box.height() * 0.5, capitals() * 1.8);
    drawShape(painter, QRectF(box.left() + sign * 0.35, box.top() + sign * 0.3, sign, sign),
              words_.stop ? Shape::stop : Shape::caution, look_(words_.stop ? Role::fault : Role::caution),
              sign * 0.09);
    const QRectF place = box.adjusted(sign * 1.7, capitals() * 0.2, -capitals() * 0.4, -capitals() * 0.2);
    const QString all = words_.cautions.join(QLatin1Char('\n'));
    // As large as they all fit: many of them are a page to be read before a hand is put to the machine.
    double size = capitals();
    const auto needs = [&] {
        return QFontMetricsF(look_.digits(size)).boundingRect(place, Qt::TextWordWrap, all).height();
    };
    while (size > look_.px(9) && needs() > place.height()) size *= 0.96;
    text.paragraph(place, all, look_.digits(size), look_(Role::ink));
}

void FarView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), look_(Role::paper));
    FittedText text(painter, *this);
    const double edge = height() * kEdge, pitch = capitals() * kPitch;
    double foot = height() - edge;
    if (!words_.folded.isEmpty()) {
        const double high = capitals() * 1.1, sign = high * 0.8;
        drawShape(painter, QRectF(edge, foot - high + high * 0.1, sign, sign), Shape::caution, look_(Role::caution),
                  sign * 0.1);
        text.line(QRectF(edge + high * 1.2, foot - high, width() - 2 * edge - high * 1.2, high),
                  Qt::AlignLeft | Qt::AlignVCenter, words_.folded, look_.digits(capitals() * 0.6), look_(Role::ink));
        foot -= high + edge / 2;
    }
    const QRectF bar(edge, foot - pitch * 1.05, width() - 2 * edge, pitch * 1.05);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look_(Role::bar));
    painter.drawRoundedRect(bar, look_.px(8), look_.px(8));
    const QRectF inside = bar.adjusted(edge, 0, -edge, 0);
    const QRectF lead = text.line(inside, Qt::AlignLeft | Qt::AlignVCenter, words_.lead,
                                  look_.digits(capitals() * 0.5), look_(Role::barQuiet));
    text.line(inside.adjusted(lead.width() + edge, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, words_.verdict,
              look_.digits(capitals()), look_(Role::barText));

    double y = readout_->geometry().bottom() + edge;
    const double lines = static_cast<double>(words_.instruction.size()) + (words_.pose.isEmpty() ? 0 : 1) +
                         (words_.wanted.isEmpty() ? 0 : 1);
    if (!words_.cautions.isEmpty()) {
        const double high = bar.top() - edge / 2 - lines * pitch - y;
        paintCautions(painter, text, QRectF(edge, y, width() - 2 * edge, high));
        y += high;
    } else {
        y += std::max(0.0, (bar.top() - y - lines * pitch) / 2); // in the middle of what is free
    }
    for (const QString& words : words_.instruction) y = line(text, y, words, Role::ink);
    if (!words_.pose.isEmpty()) y = line(text, y, words_.pose, Role::trace);
    if (!words_.wanted.isEmpty()) line(text, y, words_.wanted, Role::ink);
}

} // namespace stillwire
