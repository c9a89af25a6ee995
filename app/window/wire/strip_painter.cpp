// SPDX-License-Identifier: GPL-3.0-or-later
// The strips of TracePainter: rail, phase ribbon, machine strip, time.
#include "app/window/wire/trace_painter.hpp"
#include "app/window/words.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QFontMetricsF>

namespace stillwire {
namespace {

struct StripText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(StripText)
};

// Each phase has its own line, so that it reads without colour: level, zigzag, slope.
void drawMotif(QPainter& p, const QRectF& r, PhaseKind kind, QColor colour, double unit) {
    p.setPen(QPen(colour, unit));
    const double low = r.bottom() - 3 * unit;
    if (kind == PhaseKind::quiet) p.drawLine(QPointF(r.left(), low), QPointF(r.right(), low));
    if (kind == PhaseKind::travel)
        p.drawLine(QPointF(r.left(), r.bottom() - unit), QPointF(r.right(), r.top() + unit));
    if (kind != PhaseKind::wiggle) return;
    QPolygonF zigzag;
    const double pitch = 4 * unit;
    bool up = false;
    for (double x = r.left(); x < r.right(); x += pitch, up = !up)
        zigzag << QPointF(x, up ? low - 2 * unit : low + unit);
    // On so small a scale smooth edges are not seen, and cost more than the whole trace.
    p.setRenderHint(QPainter::Antialiasing, false);
    p.drawPolyline(zigzag);
    p.setRenderHint(QPainter::Antialiasing);
}

// One way of writing along an axis: seconds as long as all of it is in the first two minutes.
QString clock(double at_s, double axisTo_s) {
    const auto whole = static_cast<long long>(std::llround(at_s));
    if (axisTo_s <= 120) return QString::number(whole);
    const auto minutes = whole / 60, rest = whole % 60;
    if (minutes < 60) return QStringLiteral("%1:%2").arg(minutes).arg(rest, 2, 10, QLatin1Char('0'));
    return QStringLiteral("%1:%2:%3")
        .arg(minutes / 60)
        .arg(minutes % 60, 2, 10, QLatin1Char('0'))
        .arg(rest, 2, 10, QLatin1Char('0'));
}

} // namespace

void TracePainter::paintRail() {
    const QRectF& r = pic_.rail;
    p_.fillRect(r, look_(Role::page));
    if (!pic_.band.name.isEmpty()) {
        const double top = std::max(r.top(), pic_.volts.y(pic_.band.shown_V.max_V));
        const double bottom = std::min(r.bottom(), pic_.volts.y(pic_.band.shown_V.min_V));
        p_.fillRect(QRectF(r.left(), top, r.width(), bottom - top), look_(Role::band));
        p_.setPen(QPen(look_(Role::trace), look_.px(2)));
        p_.drawLine(QPointF(r.left(), top), QPointF(r.right(), top));
        p_.drawLine(QPointF(r.left(), bottom), QPointF(r.right(), bottom));
    }
    p_.setPen(QPen(look_(Role::line), 1));
    p_.setBrush(Qt::NoBrush);
    p_.drawRect(r);
    p_.setRenderHint(QPainter::Antialiasing);
    if (pic_.band.aim_V) {
        const double y = pic_.volts.y(*pic_.band.aim_V);
        p_.setPen(QPen(look_(Role::ink), look_.px(3)));
        p_.drawLine(QPointF(r.left(), y), QPointF(r.right(), y));
    }
    const double now_V = pic_.snapshot->lastVolts_V;
    if (!std::isfinite(now_V)) return;
    const double y = std::clamp(pic_.volts.y(now_V), r.top(), r.bottom());
    p_.setPen(Qt::NoPen);
    p_.setBrush(look_(Role::ink));
    p_.drawPolygon(QPolygonF{{r.left() - look_.px(4), y},
                             {r.left() + look_.px(13), y - look_.px(10)},
                             {r.left() + look_.px(13), y + look_.px(10)}});
}

void TracePainter::paintRibbon() {
    const QRectF& r = pic_.ribbon;
    p_.fillRect(r, look_(Role::plot));
    p_.save();
    p_.setClipRect(r);
    p_.setRenderHint(QPainter::Antialiasing);
    const double wireFrom_x = pic_.time.x(toSeconds(onAWireFrom(pic_.snapshot->marks, pic_.snapshot->now)));
    for (const Phase& phase : findings_.phases) {
        // Before a lead is on, nothing is quiet: there is no wire yet.
        const double left = std::max({r.left(), pic_.time.x(toSeconds(phase.from)), wireFrom_x});
        const double right = std::min(r.right(), pic_.time.x(toSeconds(phase.to)));
        if (right <= left) continue;
        const QRectF box(left, r.top(), right - left, r.height());
        if (phase.kind == PhaseKind::blind) {
            drawHatch(p_, box, look_);
        } else {
            p_.fillRect(box, look_(phase.kind == PhaseKind::quiet    ? Role::quietPhase
                                   : phase.kind == PhaseKind::wiggle ? Role::wigglePhase
                                                                     : Role::travelPhase));
            if (box.width() > 3) drawMotif(p_, box, phase.kind, look_(Role::quietText), look_.px(1.3));
        }
        p_.setPen(QPen(look_(Role::line), 1));
        p_.drawLine(box.topLeft(), box.bottomLeft());
        const QFont font = look_.font(TextSize::small, phase.kind == PhaseKind::wiggle);
        const QString word = phaseWord(phase.kind);
        if (phase.kind == PhaseKind::blind ||
            QFontMetricsF(font).horizontalAdvance(word) + look_.px(10) > box.width())
            continue;
        p_.setFont(font);
        p_.setPen(look_(Role::ink));
        const double advance = QFontMetricsF(font).horizontalAdvance(word);
        const QRectF under(box.center().x() - advance / 2 - look_.px(4), r.top() + 1, advance + look_.px(8),
                           r.height() - 2);
        p_.fillRect(under, look_(phase.kind == PhaseKind::quiet    ? Role::quietPhase
                                 : phase.kind == PhaseKind::wiggle ? Role::wigglePhase
                                                                   : Role::travelPhase));
        p_.drawText(box, Qt::AlignCenter, word);
    }
    p_.restore();
    p_.setPen(QPen(look_(Role::line), 1));
    p_.setBrush(Qt::NoBrush);
    p_.drawRect(r);
}

void TracePainter::paintMachine() {
    const QRectF& r = pic_.machine;
    if (r.isEmpty()) return;
    p_.fillRect(r, look_(Role::plot));
    p_.save();
    p_.setClipRect(r);
    p_.setRenderHint(QPainter::Antialiasing);
    paintBlind(r);
    p_.setPen(QPen(look_(Role::good), look_.px(2)));
    const double high = r.top() + look_.px(24), low = r.bottom() - look_.px(6); // below the label
    auto y = [&](double drive) { return low - std::clamp(drive, 0.0, 1.0) * (low - high); };
    const double end_s = toSeconds(pic_.snapshot->now);
    const double seenFrom_s = std::max(pic_.time.from_s, pic_.time.time_s(wantedFrom_x() - look_.px(4)));
    QPolygonF run;
    const auto& points = findings_.machine.points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double from_s = toSeconds(points[i].time);
        const double to_s = i + 1 < points.size() ? toSeconds(points[i + 1].time) : std::max(end_s, from_s);
        if (to_s < seenFrom_s || from_s > pic_.time.to_s) continue;
        run << QPointF(pic_.time.x(from_s), y(points[i].drive)) << QPointF(pic_.time.x(to_s), y(points[i].drive));
    }
    if (run.size() > 1) p_.drawPolyline(run);
    // The machine takes the signal; what another wire showed is none of it.
    for (const AwaySpan& away : awayFromSignal(pic_.snapshot->marks, pic_.snapshot->now)) {
        const double left = std::max(r.left(), pic_.time.x(toSeconds(away.from)));
        const double right = std::min(r.right(), pic_.time.x(toSeconds(away.to)));
        if (right > left) p_.fillRect(QRectF(left, r.top(), right - left, r.height()), look_(Role::page));
    }
    QString label = StripText::tr("what the machine would do");
    if (findings_.machine.stops > 0)
        label = StripText::tr("what the machine would do · sure stops: %1").arg(findings_.machine.stops);
    else if (findings_.machine.stopsPossible > 0)
        label = StripText::tr("what the machine would do · possible stops: %1").arg(findings_.machine.stopsPossible);
    p_.setFont(look_.font(TextSize::small));
    p_.setPen(look_(Role::ink));
    const QFontMetricsF metrics(p_.font());
    const QRectF place(r.left() + look_.px(4), r.top() + 1, metrics.horizontalAdvance(label) + look_.px(8),
                       metrics.height());
    p_.fillRect(place, look_(Role::plot)); // hatching may lie under it; the curve runs below
    p_.drawText(place, Qt::AlignCenter, label);
    p_.restore();
    p_.setPen(QPen(look_(Role::line), 1));
    p_.setBrush(Qt::NoBrush);
    p_.drawRect(r);
}

void TracePainter::paintTime() {
    const QRectF& lowest = pic_.machine.isEmpty() ? pic_.ribbon : pic_.machine;
    if (!wanted(QRectF(0, lowest.bottom() + look_.px(3), pic_.plot.right() - look_.px(60), look_.px(17)))) return;
    p_.setFont(look_.font(TextSize::small));
    p_.setPen(look_(Role::quietText));
    const double perPixel = pic_.time.span_s() / std::max(1.0, pic_.plot.width());
    const double step = niceSeconds(perPixel * look_.px(110));
    const std::vector<double> at = ticks(pic_.time.from_s, pic_.time.to_s, step);
    for (double time_s : at) {
        QString text = clock(time_s, pic_.time.to_s);
        if (time_s == at.back() && !text.contains(QLatin1Char(':'))) text += StripText::tr(" s");
        const double x =
            std::clamp(pic_.time.x(time_s), pic_.plot.left() + look_.px(8), pic_.plot.right() - look_.px(18));
        p_.drawText(QRectF(x - look_.px(50), lowest.bottom() + look_.px(3), look_.px(100), look_.px(18)),
                    Qt::AlignHCenter | Qt::AlignTop, text);
    }
}

VoltAxis voltAxisFor(const SessionSnapshot& snapshot, const Sheet* sheet, const Band& band, const TimeAxis& time) {
    VoltAxis axis;
    const bool close =
        !band.name.isEmpty() &&
        (band.aim_V || band.shown_V.max_V < 0.6 ||
         (sheet && band.shown_V.min_V == sheet->reference.min_V && band.shown_V.max_V == sheet->reference.max_V));
    if (close) {
        const double height = band.shown_V.max_V - band.shown_V.min_V;
        axis.low_V = band.shown_V.min_V - height;
        axis.high_V = band.shown_V.max_V + height;
    } else {
        axis.low_V = 0;
        axis.high_V = std::max(5.25, sheet ? sheet->nominal_V * 1.05 : 0.0);
    }
    const auto seen = snapshot.trace.extremes(fromSeconds(std::max(0.0, time.from_s)), fromSeconds(time.to_s), 1);
    if (!seen.empty() && seen.front().count > 0) {
        const bool lower = seen.front().min_V<axis.low_V, higher = seen.front().max_V> axis.high_V;
        if (lower) axis.low_V = seen.front().min_V;
        if (higher) axis.high_V = seen.front().max_V;
        const double room = 0.04 * (axis.high_V - axis.low_V); // of what it has become: the line stays off the edge
        if (lower) axis.low_V -= room;
        if (higher) axis.high_V += room;
    }
    return axis;
}

} // namespace stillwire
