// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/trace_painter.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QFontMetricsF>

namespace stillwire {
namespace {

constexpr double kSame_px = 0.4; // no eye tells it from level

bool overlaps(Time from, Time to, const TimeAxis& axis) {
    return toSeconds(to) >= axis.from_s && toSeconds(from) <= axis.to_s;
}

} // namespace

TracePainter::TracePainter(QPainter& painter, const Look& look, const TracePicture& picture)
    : p_(painter), look_(look), pic_(picture), findings_(*picture.snapshot->findings) {}

bool TracePainter::wanted(const QRectF& place) const {
    return pic_.wanted.isEmpty() || pic_.wanted.intersects(place.toAlignedRect());
}

double TracePainter::wantedFrom_x() const {
    if (pic_.wanted.isEmpty()) return pic_.plot.left();
    return std::max(pic_.plot.left(), double((pic_.wanted & pic_.plot.toAlignedRect()).boundingRect().left()));
}

void TracePainter::paintPlot() {
    p_.fillRect(pic_.plot, look_(Role::plot));
    p_.save();
    p_.setClipRect(pic_.plot);
    paintBand();
    paintBlind(pic_.plot);
    paintBandLabel();
    paintLine();
    paintEvents();
    p_.restore();
    p_.setPen(QPen(look_(Role::line), 1));
    p_.setBrush(Qt::NoBrush);
    p_.drawRect(pic_.plot);
    paintVoltLabels();
}

void TracePainter::paintOver() {
    over_ = true;
    p_.save();
    p_.setClipRect(pic_.plot);
    paintLine();
    p_.restore();
    over_ = false;
}

void TracePainter::paintBand() {
    if (pic_.band.name.isEmpty()) return;
    const double top = pic_.volts.y(pic_.band.shown_V.max_V), bottom = pic_.volts.y(pic_.band.shown_V.min_V);
    p_.fillRect(QRectF(pic_.plot.left(), top, pic_.plot.width(), bottom - top), look_(Role::band));
    // Dots on whole pixels: a dotted pen strokes each dot as a shape of its own, at every reading.
    const int dot = std::max(2, look_.ipx(2)), thick = std::max(1, look_.ipx(1.5));
    const int first = qRound(pic_.plot.left());
    const int left = first + (qRound(wantedFrom_x()) - first) / (2 * dot) * (2 * dot);
    for (const double edge : {top, bottom})
        for (int x = left; x < qRound(pic_.plot.right()); x += 2 * dot)
            p_.fillRect(QRect(x, qRound(edge) - thick / 2, dot, thick), look_(Role::trace));
    if (pic_.band.aim_V) {
        const double y = pic_.volts.y(*pic_.band.aim_V);
        p_.setPen(QPen(look_(Role::ink), look_.px(2), Qt::DashLine));
        p_.drawLine(QPointF(pic_.plot.left(), y), QPointF(pic_.plot.right(), y));
    }
}

// Whether the trace keeps out of the place, with a little room around it.
bool TracePainter::leftFree(const QRectF& place) const {
    const double room = look_.px(4);
    const Time from = fromSeconds(std::max(0.0, pic_.time.time_s(place.left() - room)));
    const Time to = fromSeconds(std::max(0.0, pic_.time.time_s(place.right() + room)));
    if (to <= from) return true;
    const auto seen = pic_.snapshot->trace.extremes(from, to, 1);
    if (seen.empty() || seen.front().count == 0) return true;
    return pic_.volts.y(seen.front().min_V) < place.top() - room ||
           pic_.volts.y(seen.front().max_V) > place.bottom() + room;
}

QRectF TracePainter::bandLabelPlace() const {
    if (pic_.band.name.isEmpty()) return {};
    const double top = pic_.volts.y(pic_.band.shown_V.max_V), bottom = pic_.volts.y(pic_.band.shown_V.min_V);
    const QFont font = look_.font(TextSize::small);
    const QFontMetricsF metrics(font);
    const double height = metrics.height();
    const QString label = bandLabel(pic_.band);
    // Against the window's edge, outside it, at the first place that the trace leaves free.
    const double width = metrics.horizontalAdvance(label);
    const double left = pic_.plot.left() + look_.px(8), right = pic_.plot.right() - look_.px(8) - width;
    const double over = top - height - look_.px(2), under = bottom + look_.px(2);
    QRectF box(left, over > pic_.plot.top() ? over : under, width, height);
    bool placed = false;
    for (const double x : {left, right, 0.5 * (left + right)}) {
        for (const double y : {over, under}) {
            const QRectF place(x, y, width, height);
            if (placed || y < pic_.plot.top() || place.bottom() > pic_.plot.bottom() || !leftFree(place)) continue;
            box = place;
            placed = true;
        }
    }
    return box;
}

void TracePainter::paintBandLabel() {
    const QRectF box = bandLabelPlace();
    if (box.isEmpty() || !wanted(box)) return;
    p_.fillRect(box.adjusted(-look_.px(2), 0, look_.px(2), 0), look_(Role::plot)); // hatching may lie under it
    p_.setFont(look_.font(TextSize::small));
    p_.setPen(look_(Role::trace));
    p_.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, bandLabel(pic_.band));
}

void TracePainter::paintBlind(const QRectF& area) {
    for (const BlindSpan& span : findings_.blind) {
        if (!overlaps(span.from, span.to, pic_.time)) continue;
        const double left = std::max(area.left(), pic_.time.x(toSeconds(span.from)));
        const double right = std::min(area.right(), pic_.time.x(toSeconds(span.to)));
        if (right > left) drawHatch(p_, QRectF(left, area.top(), right - left, area.height()), look_);
    }
}

double TracePainter::labelWidth(const Look& look) {
    return QFontMetricsF(look.font(TextSize::small)).horizontalAdvance(QStringLiteral("-0.00")) + look.px(12);
}

void TracePainter::paintVoltLabels() {
    if (!wanted(QRectF(0, pic_.plot.top(), pic_.plot.left() + 1, pic_.plot.height()))) return;
    p_.setFont(look_.font(TextSize::small));
    const double perPixel = (pic_.volts.high_V - pic_.volts.low_V) / std::max(1.0, pic_.plot.height());
    const double step = niceStep(perPixel * look_.px(40));
    const int decimals = step >= 1 ? 0 : (step >= 0.1 ? 1 : 2);
    for (double v : ticks(pic_.volts.low_V, pic_.volts.high_V, step)) {
        const double y = pic_.volts.y(v);
        p_.setPen(QPen(look_(Role::strongLine), 1));
        p_.drawLine(QPointF(pic_.plot.left() - look_.px(5), y), QPointF(pic_.plot.left(), y));
        p_.setPen(look_(Role::quietText));
        p_.drawText(QRectF(0, y - look_.px(10), pic_.plot.left() - look_.px(10), look_.px(20)),
                    Qt::AlignRight | Qt::AlignVCenter, QString::fromStdString(plain(v, decimals)));
    }
}

void TracePainter::paintLine() {
    const TraceSnapshot& trace = pic_.snapshot->trace;
    if (trace.empty()) return;
    const Time from = fromSeconds(std::max(0.0, pic_.time.from_s)), to = fromSeconds(pic_.time.to_s);
    const double wantedFrom_s = pic_.time.time_s(wantedFrom_x());
    std::size_t first = trace.firstAtOrAfter(std::max(from, fromSeconds(std::max(0.0, wantedFrom_s))));
    const std::size_t last = trace.firstAtOrAfter(to);
    if (first > 0) --first;
    if (static_cast<double>(last - trace.firstAtOrAfter(from)) > 2 * pic_.plot.width()) return paintColumns(from, to);
    const double gap_s = std::max(2.5 * findings_.meter.interval_s, 0.5);
    p_.setRenderHint(QPainter::Antialiasing);
    if (over_)
        p_.setPen(QPen(look_(Role::caution), look_.px(2), Qt::DashLine, Qt::FlatCap, Qt::BevelJoin));
    else
        // Round joins are curves, and cost more than all the rest of the line; nobody sees them on two pixels.
        p_.setPen(QPen(look_(Role::trace), look_.px(2), Qt::SolidLine, Qt::SquareCap, Qt::BevelJoin));
    QPolygonF run;
    auto draw = [&] {
        if (run.size() > 1) p_.drawPolyline(run);
        if (run.size() == 1) p_.drawPoint(run.front());
        run.clear();
    };
    double before_s = 0;
    for (std::size_t i = first; i < std::min(last + 1, trace.size()); ++i) {
        const TracePoint& point = trace[i];
        const double at_s = toSeconds(point.time);
        if (!run.isEmpty() && at_s - before_s > gap_s) draw();
        before_s = at_s;
        if (std::isnan(point.volts_V)) {
            draw();
            continue;
        }
        const QPointF here(pic_.time.x(at_s), pic_.volts.y(point.volts_V));
        // A quiet wire is one stroke: smoothing a line costs by its corners.
        const auto level = [&](const QPointF& p) { return std::abs(p.y() - run[run.size() - 2].y()) < kSame_px; };
        if (run.size() >= 2 && level(run.back()) && level(here))
            run.back() = here;
        else
            run << here;
    }
    draw();
}

void TracePainter::paintColumns(Time from, Time to) {
    const double across = pic_.time.right - pic_.time.left;
    const auto columns = static_cast<std::size_t>(std::max(1.0, across));
    const std::vector<TraceExtremes> slices = pic_.snapshot->trace.extremes(from, to, columns);
    QVector<QRectF> bars;
    bars.reserve(static_cast<qsizetype>(columns));
    const double width = across / static_cast<double>(columns);
    const double thick = std::max(look_.px(2), width); // as the line it stands for
    double lastTop = 0, lastBottom = 0;
    bool joined = false;
    for (std::size_t i = 0; i < columns; ++i) {
        if (slices[i].count == 0) {
            joined = false;
            continue;
        }
        const double x = pic_.time.x(toSeconds(from)) + (static_cast<double>(i) + 0.5) * width;
        double top = pic_.volts.y(slices[i].max_V), bottom = pic_.volts.y(slices[i].min_V);
        if (joined) { // reach for the neighbour, so that the line has no holes
            top = std::min(top, lastBottom);
            bottom = std::max(bottom, lastTop);
        }
        bars << QRectF(x - thick / 2, top - thick / 2, thick, bottom - top + thick);
        lastTop = pic_.volts.y(slices[i].max_V);
        lastBottom = pic_.volts.y(slices[i].min_V);
        joined = true;
    }
    p_.setRenderHint(QPainter::Antialiasing, false);
    p_.setPen(Qt::NoPen);
    p_.setBrush(look_(Role::trace));
    p_.drawRects(bars);
    p_.setBrush(Qt::NoBrush);
    p_.setRenderHint(QPainter::Antialiasing);
}

void TracePainter::paintEvents() {
    const double size = look_.px(13);
    double taken = -1e9; // wedges nearer than this would be one blot
    for (const Excursion& e : findings_.excursions) {
        if (e.kind == ExcursionKind::aside || !overlaps(e.from, e.to, pic_.time)) continue;
        const double x = pic_.time.x(0.5 * (toSeconds(e.from) + toSeconds(e.to)));
        if (x - taken < size * 0.4) continue;
        taken = x;
        const bool up = e.direction == Direction::up;
        double y = pic_.volts.y(e.extreme_V) + (up ? -size - look_.px(5) : look_.px(5));
        y = std::clamp(y, pic_.plot.top() + 2, pic_.plot.bottom() - size - 2);
        const QRectF box(x - size / 2, y, size, size);
        if (e.kind == ExcursionKind::play)
            drawShape(p_, box, Shape::play, look_(Role::quietText), look_.px(2));
        else
            drawShape(p_, box, up ? Shape::wedgeUp : Shape::wedgeDown, look_(Role::fault), 1);
    }
    for (const Aside& aside : findings_.aside) {
        if (!overlaps(aside.from, aside.to, pic_.time)) continue;
        const double from = pic_.time.x(toSeconds(aside.from)), to = pic_.time.x(toSeconds(aside.to));
        const double top = pic_.volts.y(std::max(aside.from_V, aside.to_V)) - size / 2;
        const double bottom = pic_.volts.y(std::min(aside.from_V, aside.to_V)) + size / 2;
        const double wide = std::max(to - from + size, 1.5 * size);
        drawShape(p_, QRectF((from + to - wide) / 2, top, wide, bottom - top), Shape::aside, look_(Role::quietText),
                  look_.px(2));
    }
    for (const LevelJump& jump : findings_.jumps) {
        if (!overlaps(jump.at, jump.at, pic_.time)) continue;
        const double x = pic_.time.x(toSeconds(jump.at));
        p_.setPen(QPen(look_(Role::fault), look_.px(1.5), Qt::DashDotLine));
        p_.drawLine(QPointF(x, pic_.plot.top()), QPointF(x, pic_.plot.bottom()));
        drawShape(p_, QRectF(x + look_.px(4), pic_.plot.top() + look_.px(6), look_.px(18), look_.px(16)), Shape::step,
                  look_(Role::fault), look_.px(3));
    }
    if (pic_.selected_s) {
        const double x = pic_.time.x(*pic_.selected_s);
        p_.setPen(QPen(look_(Role::ink), look_.px(1.5)));
        p_.drawLine(QPointF(x, pic_.plot.top()), QPointF(x, pic_.plot.bottom()));
    }
}

} // namespace stillwire
