// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/readout_view.hpp"

#include "app/window/wire/band.hpp"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainterPath>

namespace stillwire {
namespace {

constexpr double kOver = 0.1;  // of the type size
constexpr double kUnit = 0.24; // of the digits' height

struct StateColours {
    Role edge, back, words;
};

StateColours coloursOf(WireState state) {
    switch (state) {
    case WireState::steady: return {Role::good, Role::plot, Role::good};
    case WireState::moving: return {Role::trace, Role::plot, Role::trace};
    case WireState::dropped:
    case WireState::jumped:
    case WireState::overVoltage: return {Role::loudText, Role::loud, Role::loudText};
    case WireState::blind: return {Role::midText, Role::mid, Role::midText};
    case WireState::silent: break;
    }
    return {Role::quietText, Role::paper, Role::quietText};
}

// The frame tells the state too: its edge does what the wire does.
QPainterPath frameOf(WireState state, const QRectF& r, double d) {
    QPainterPath path;
    switch (state) {
    case WireState::dropped: // a notch in the upper edge
        path.addPolygon(QPolygonF{{r.left(), r.top()},
                                  {r.right() - 5.2 * d, r.top()},
                                  {r.right() - 4 * d, r.top() + 1.2 * d},
                                  {r.right() - 2.8 * d, r.top()},
                                  {r.right(), r.top()},
                                  {r.right(), r.bottom()},
                                  {r.left(), r.bottom()}});
        break;
    case WireState::moving: // leaning sides
        path.addPolygon(QPolygonF{
            {r.left() + d, r.top()}, {r.right(), r.top()}, {r.right() - d, r.bottom()}, {r.left(), r.bottom()}});
        break;
    case WireState::jumped: // a step in the upper edge
        path.addPolygon(QPolygonF{{r.left(), r.top() + d},
                                  {r.right() - 4 * d, r.top() + d},
                                  {r.right() - 4 * d, r.top()},
                                  {r.right(), r.top()},
                                  {r.right(), r.bottom()},
                                  {r.left(), r.bottom()}});
        break;
    case WireState::overVoltage: // cut corners, as a stop sign
        path.addPolygon(QPolygonF{{r.left() + 1.6 * d, r.top()},
                                  {r.right() - 1.6 * d, r.top()},
                                  {r.right(), r.top() + 1.6 * d},
                                  {r.right(), r.bottom() - 1.6 * d},
                                  {r.right() - 1.6 * d, r.bottom()},
                                  {r.left() + 1.6 * d, r.bottom()},
                                  {r.left(), r.bottom() - 1.6 * d},
                                  {r.left(), r.top() + 1.6 * d}});
        break;
    default: path.addRoundedRect(r, d, d);
    }
    path.closeSubpath();
    return path;
}

} // namespace

ReadoutView::ReadoutView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("The number and what is happening"));
    connect(&look, &Look::changed, this, [this] {
        signs_.clear();
        updateGeometry();
        update();
    });
}

void ReadoutView::show(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const QString number = numberText(snapshot.lastVolts_V, snapshot.findings->meter.resolution_V);
    const StateWord word = stateWord(snapshot);
    QString wire =
        wireWords(wireUnderTest(snapshot), snapshot.prompt.movingLead || snapshot.prompt.step == Step::hookUp);
    if (const auto& ratio = snapshot.findings->ratio) {
        const QString reference = numberText(ratio->reference_V, snapshot.findings->meter.resolution_V);
        if (ratio->level_V)
            wire = tr("reference %1 V · level %2 V")
                       .arg(reference, numberText(*ratio->level_V, snapshot.findings->meter.resolution_V));
        else
            wire = tr("reference %1 V").arg(reference);
    }
    if (number == number_ && word == word_ && wire == wire_) return;
    number_ = number;
    word_ = word;
    wire_ = wire;
    setAccessibleDescription(tr("%1 volts. %2, %3, %4").arg(number_, word_.word, word_.detail, wire_));
    update();
}

bool ReadoutView::loud() const { return word_.state == WireState::dropped; }

double ReadoutView::leastWord() const {
    if (far_) return width() * 0.42;
    return look_.px(width() < look_.px(700) ? 236 : 264);
}

double ReadoutView::digitHeight() const {
    const double wanted = far_ ? height() * 0.78 : std::max(window()->height() / 6.0, look_.px(60));
    const double room = width() - leastWord() - look_.px(14), need = numberWidth(wanted);
    return need > room ? wanted * (room - look_.px(8)) / need : wanted;
}

QSize ReadoutView::sizeHint() const { return {look_.ipx(480), look_.ipx(800.0 / 6 + 12)}; }

double ReadoutView::numberWidth(double high) const {
    const QFontMetricsF digits(look_.digits(high)), unit(look_.digits(high * kUnit));
    return 4 * digits.horizontalAdvance(QLatin1Char('0')) + digits.horizontalAdvance(QLatin1Char('.')) +
           look_.px(10) + unit.horizontalAdvance(QLatin1Char('V'));
}

void ReadoutView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF all = rect();
    // The number has what it needs, the word the rest of a wide window.
    const double boxWidth = std::clamp(all.width() - numberWidth(digitHeight()) - look_.px(28), leastWord(),
                                       std::max(leastWord(), look_.px(440)));
    if (loud()) paintTurned(painter, all, all.right() - boxWidth);
    paintNumber(painter, all.adjusted(0, 0, -boxWidth - look_.px(14), 0));
    paintWord(painter, QRectF(all.right() - boxWidth, all.top() + look_.px(2), boxWidth, all.height() - look_.px(4)));
}

// The head is turned inside out, with a bite out of it over the unit, down or up as the signal went: seen with the
// sound off by whoever looks elsewhere.
void ReadoutView::paintTurned(QPainter& painter, const QRectF& all, double wordLeft) {
    painter.fillRect(all, look_(Role::loud));
    const QFontMetricsF digits(look_.digits(digitHeight()));
    const double digitsRight =
        4 * digits.horizontalAdvance(QLatin1Char('0')) + digits.horizontalAdvance(QLatin1Char('.'));
    const double x = (digitsRight + wordLeft) / 2,
                 half = std::min((wordLeft - digitsRight) * 0.46, all.height() * 0.4);
    const double deep = all.height() * 0.58;
    const bool up = word_.shape == Shape::peak;
    const double base = up ? all.top() + deep : all.top(), tip = up ? all.top() : all.top() + deep;
    painter.setPen(Qt::NoPen);
    painter.setBrush(look_(Role::paper));
    painter.drawPolygon(QPolygonF{{x - half, base}, {x + half, base}, {x, tip}});
}

const QPixmap& ReadoutView::sign(QChar sign, const QFont& font, QColor colour) {
    const double ratio = devicePixelRatioF();
    const QString key = QStringLiteral("%1 %2 %3 %4").arg(sign).arg(font.pixelSize()).arg(colour.rgba()).arg(ratio);
    const auto kept = signs_.constFind(key);
    if (kept != signs_.constEnd()) return *kept;
    const QFontMetricsF metrics(font);
    // Room around it: a sign may reach over its own advance.
    const QSizeF size(metrics.horizontalAdvance(sign) + 2 * kOver * font.pixelSize(), metrics.height());
    if (signs_.size() > 40) signs_.clear(); // of sizes the window no longer has
    QPixmap made((size * ratio).toSize());
    made.setDevicePixelRatio(ratio);
    made.fill(Qt::transparent);
    QPainter painter(&made);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(kOver * font.pixelSize(), metrics.ascent()), sign);
    return *signs_.insert(key, made);
}

void ReadoutView::paintNumber(QPainter& painter, const QRectF& area) {
    // Each sign has its own place, the same for every digit, so that nothing moves when the number changes.
    QFont font = look_.digits(digitHeight());
    QFontMetricsF metrics(font);
    const QString cells = QStringLiteral("8.888");
    const QFont unitFont = look_.digits(digitHeight() * kUnit);
    auto widthOf = [&](QChar c) {
        return c.isDigit() || c == QLatin1Char('-') ? metrics.horizontalAdvance(QLatin1Char('0'))
                                                    : metrics.horizontalAdvance(c);
    };
    double whole = 0;
    for (QChar c : cells) whole += widthOf(c);
    const bool negative = number_.size() > 1 && number_.front() == QLatin1Char('-') && number_.at(1).isDigit();
    const QString digits = negative ? number_.mid(1) : number_;
    const double right = area.left() + whole;
    const double baseline = area.center().y() + digitHeight() / 2;
    const bool none = number_.startsWith(QStringLiteral("--"));
    const QColor ink = look_(loud() ? Role::loudText : none ? Role::quietText : Role::ink);
    double x = right;
    for (auto c = digits.rbegin(); c != digits.rend(); ++c) {
        const double width = widthOf(*c);
        x -= width;
        const double at = x + (width - metrics.horizontalAdvance(*c)) / 2 - kOver * font.pixelSize();
        painter.drawPixmap(QPointF(std::round(at), std::round(baseline - metrics.ascent())), sign(*c, font, ink));
    }
    if (negative) { // in the margin: it may not push the digits
        const double thick = digitHeight() * 0.1;
        painter.fillRect(QRectF(area.left() - look_.px(22), area.center().y() - thick / 2, look_.px(20), thick), ink);
    }
    const double ascent = QFontMetricsF(unitFont).ascent();
    const double at = right + look_.px(10) - kOver * unitFont.pixelSize();
    painter.drawPixmap(QPointF(std::round(at), std::round(baseline - ascent)),
                       sign(QLatin1Char('V'), unitFont, loud() ? ink : look_(Role::quietText)));
}

void ReadoutView::paintWord(QPainter& painter, const QRectF& box) {
    const auto [edge, back, words] = coloursOf(word_.state);
    const bool loud = back == Role::loud;
    const double stroke = look_.px(loud ? 3.5 : 2);
    QPen pen(look_(edge), stroke);
    if (word_.state == WireState::blind) pen.setDashPattern({4, 3});
    if (word_.state == WireState::silent) pen.setDashPattern({1, 3});
    pen.setJoinStyle(Qt::MiterJoin);
    const QPainterPath frame = frameOf(word_.state, box.adjusted(stroke, stroke, -stroke, -stroke), look_.px(10));
    painter.fillPath(frame, look_(back));
    if (word_.state == WireState::blind) {
        painter.save();
        painter.setClipPath(frame);
        drawHatch(painter, QRectF(box.left(), box.top(), look_.px(13), box.height()), look_);
        painter.restore();
    }
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(frame);
    if (word_.state == WireState::overVoltage) {
        painter.setPen(QPen(look_(edge), look_.px(1.5)));
        const double in = look_.px(7);
        painter.drawPath(frameOf(word_.state, box.adjusted(in, in, -in, -in), look_.px(9)));
    }
    if (far_) return paintFarWord(painter, box, look_(words));
    const double left = box.left() + look_.px(20), right = box.right() - look_.px(12);
    const QRectF iconBox(left, box.top() + look_.px(27), look_.px(36), look_.px(34));
    drawShape(painter, iconBox, word_.shape, look_(edge), look_.px(6));
    FittedText text(painter, *this);
    const double wordLeft = iconBox.right() + look_.px(11);
    const QRectF place(wordLeft, box.top() + look_.px(14), right - wordLeft, look_.px(58));
    const QFont big = look_.font(box.width() < look_.px(280) ? TextSize::word : TextSize::state, true);
    QFont smaller = big;
    smaller.setPixelSize(big.pixelSize() * 3 / 5);
    if (QFontMetricsF(big).horizontalAdvance(word_.word) <= place.width() * 1.25 ||
        !word_.word.contains(QLatin1Char(' ')))
        text.line(place, Qt::AlignLeft | Qt::AlignVCenter, word_.word, big, look_(edge));
    else // on two lines
    {
        const double need = QFontMetricsF(smaller).boundingRect(place, Qt::TextWordWrap, word_.word).height();
        const double down = (place.height() + look_.px(6) - need) / 2;
        text.paragraph(place.adjusted(0, down, 0, look_.px(12)), word_.word, smaller, look_(edge));
    }
    text.line(QRectF(left, box.top() + look_.px(82), right - left, look_.px(26)), Qt::AlignLeft | Qt::AlignVCenter,
              word_.detail, look_.font(box.width() > look_.px(380) ? TextSize::title : TextSize::text, true),
              look_(loud || back == Role::mid ? words : Role::ink));
    const bool fits = QFontMetricsF(look_.font(TextSize::text)).horizontalAdvance(wire_) <= 1.2 * (right - left);
    const TextSize wireSize = fits ? TextSize::text : TextSize::small;
    text.line(QRectF(left, box.top() + look_.px(108), right - left, look_.px(24)), Qt::AlignLeft | Qt::AlignVCenter,
              wire_, look_.font(wireSize), look_(loud || back == Role::mid ? words : Role::ink));
}

// One word and its drawing, as large as the box; on two lines if it is two words.
void ReadoutView::paintFarWord(QPainter& painter, const QRectF& box, QColor colour) {
    const double icon = std::min(box.height() * 0.42, box.width() * 0.16);
    drawShape(painter, QRectF(box.left() + icon * 0.4, box.center().y() - icon / 2, icon, icon), word_.shape, colour,
              icon * 0.16);
    const QRectF place = box.adjusted(icon * 1.7, 0, -icon * 0.3, 0);
    const QString word = word_.word.toUpper();
    const double least = window()->height() * 0.052;
    double size = box.height() * 0.4;
    const auto fits = [&](const QStringList& lines) {
        const QFontMetricsF metrics(look_.digits(size));
        return std::all_of(lines.begin(), lines.end(),
                           [&](const QString& l) { return metrics.horizontalAdvance(l) <= place.width(); });
    };
    QStringList lines{word};
    while (size > least && !fits(lines)) size *= 0.95;
    if (!fits(lines) && word.contains(QLatin1Char(' '))) {
        const auto middle = word.indexOf(QLatin1Char(' '), word.size() / 3);
        if (middle > 0) lines = {word.left(middle), word.mid(middle + 1)};
    }
    FittedText text(painter, *this);
    const double pitch = size * 1.6;
    double y = place.center().y() - pitch * static_cast<double>(lines.size()) / 2;
    for (const QString& line : lines) {
        text.line(QRectF(place.left(), y, place.width(), pitch), Qt::AlignLeft | Qt::AlignVCenter, line,
                  look_.digits(size), colour);
        y += pitch;
    }
}

} // namespace stillwire
