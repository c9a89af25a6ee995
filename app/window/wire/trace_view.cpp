// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/trace_view.hpp"

#include "app/window/wire/trace_change.hpp"

#include <cmath>
#include <utility>

#include <QFocusEvent>
#include <QMouseEvent>
#include <QWheelEvent>

namespace stillwire {

TraceView::TraceView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_OpaquePaintEvent); // it fills its ground itself; nothing is painted behind it
    setAccessibleName(tr("Trace of the readings"));
    connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
}

void TraceView::show(const Scene& scene) {
    const Band band = scene.sheet ? bandUnderTest(*scene.sheet, *scene.snapshot) : Band{};
    const double now_s = toSeconds(scene.snapshot->now);
    // The session ticks more often than the meter reads: paint for a reading, a mark, another window, or a second
    // gone.
    const bool same = scene_.snapshot && scene_.sheet == scene.sheet && band == band_ &&
                      scene.snapshot->trace.size() == scene_.snapshot->trace.size() &&
                      scene.snapshot->marks.size() == scene_.snapshot->marks.size() &&
                      scene.snapshot->findings->readings == scene_.snapshot->findings->readings &&
                      scene.snapshot->link == scene_.snapshot->link && std::abs(now_s - painted_s_) < 1;
    if (same) return;
    const Scene before = std::exchange(scene_, scene);
    const bool grew = before.snapshot && before.sheet == scene.sheet && band == band_ && !warmAfter_s_ &&
                      onlyGrew(*before.snapshot, *scene.snapshot);
    band_ = band;
    painted_s_ = now_s;
    time_.setEnd(now_s);
    setAccessibleDescription(band_.name.isEmpty() ? QString() : bandLabel(band_));
    const Frame frame = this->frame();
    if (std::exchange(frame_, frame) == frame && grew)
        updateEnd(before);
    else
        update();
}

TraceView::Frame TraceView::frame() const {
    QPixmap nowhere(1, 1);
    QPainter painter(&nowhere);
    const TracePicture pic = picture();
    return {pic.volts, pic.time, TracePainter(painter, look_, pic).bandLabelPlace()};
}

// From where the trace ended to where it ends, over all strips; the level of now beside them; and the ribbon, whose
// newest word stands in the middle of its phase.
void TraceView::updateEnd(const Scene& before) {
    const TracePicture pic = picture();
    const TraceSnapshot& trace = before.snapshot->trace;
    const double room = look_.px(8);
    const double from = pic.time.x(toSeconds(std::min(trace[trace.size() - 1].time, before.snapshot->now))) - room;
    const double to = pic.time.x(toSeconds(scene_.snapshot->now)) + room;
    const QRectF& lowest = pic.machine.isEmpty() ? pic.ribbon : pic.machine;
    update(QRectF(QPointF(std::max(pic.plot.left(), from), 0), QPointF(to, lowest.bottom() + 1)).toAlignedRect());
    update(pic.rail.adjusted(-room, -room, room, room).toAlignedRect());
    update(pic.ribbon.toAlignedRect());
}

bool TraceView::layWarmOverCold() {
    if (warmAfter_s_) {
        warmAfter_s_.reset();
        showAll();
        return true;
    }
    if (!scene_.snapshot) return false;
    const std::optional<PoseSpan> cold = posesOf(scene_.snapshot->marks, Step::wiggleShaft, scene_.snapshot->now);
    const std::optional<PoseSpan> warm = posesOf(scene_.snapshot->marks, Step::warmRepeat, scene_.snapshot->now);
    if (!cold || !warm) return false;
    warmAfter_s_ = warm->from_s - cold->from_s;
    time_.showSpan(cold->from_s - 2, cold->from_s + std::max(cold->length_s(), warm->length_s()) + 2);
    moved();
    return true;
}

void TraceView::reset(double length_s) {
    warmAfter_s_.reset();
    scene_ = Scene{};
    time_ = TimeWindow{};
    time_.expect(length_s);
    selected_s_.reset();
}

void TraceView::moved() { update(); }

void TraceView::lookAt(double time_s) {
    selected_s_ = time_s;
    time_.lookAt(time_s);
    moved();
}

void TraceView::zoom(double factor) {
    time_.zoom(factor);
    moved();
}

void TraceView::scroll(double spans) {
    time_.scroll(spans);
    moved();
}

void TraceView::followEnd() {
    selected_s_.reset();
    time_.follow();
    moved();
}

void TraceView::showAll() {
    time_.showAll();
    moved();
}

TracePicture TraceView::picture() const {
    TracePicture pic;
    pic.snapshot = scene_.snapshot.get();
    pic.sheet = scene_.sheet.get();
    pic.band = band_;
    pic.selected_s = selected_s_;
    const double left = TracePainter::labelWidth(look_), right = width() - look_.px(42);
    const bool machine = scene_.sheet && scene_.sheet->drive && height() > look_.px(230); // the trace goes before it
    const double timeRow = look_.px(20), ribbonHeight = look_.px(22), machineHeight = machine ? look_.px(56) : 0;
    double bottom = height() - timeRow;
    if (machine) {
        pic.machine = QRectF(left, bottom - machineHeight, right - left, machineHeight);
        bottom -= machineHeight + look_.px(8);
    }
    pic.ribbon = QRectF(left, bottom - ribbonHeight, right - left, ribbonHeight);
    bottom -= ribbonHeight + look_.px(8);
    pic.plot = QRectF(left, look_.px(8), right - left, bottom - look_.px(8));
    pic.rail = QRectF(right + look_.px(10), pic.plot.top(), look_.px(22), pic.plot.height());
    pic.time = {time_.from_s(), time_.to_s(), left, right - look_.px(10)}; // the newest mark is seen whole
    pic.volts = voltAxisFor(*scene_.snapshot, scene_.sheet.get(), band_, pic.time);
    pic.volts.top = pic.plot.top();
    pic.volts.bottom = pic.plot.bottom();
    return pic;
}

void TraceView::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
    if (!scene_.snapshot) return;
    TracePicture pic = picture();
    if (event->region() != QRegion(rect())) pic.wanted = event->region();
    TracePainter trace(painter, look_, pic);
    trace.paintPlot();
    if (warmAfter_s_) {
        TracePicture warm = pic;
        warm.time.from_s += *warmAfter_s_;
        warm.time.to_s += *warmAfter_s_;
        TracePainter(painter, look_, warm).paintOver();
        FittedText text(painter, *this);
        text.line(pic.plot.adjusted(look_.px(8), look_.px(4), -look_.px(8), 0), Qt::AlignLeft | Qt::AlignTop,
                  tr("cold: whole line, warm: broken line"), look_.font(TextSize::small, true), look_(Role::ink));
    }
    trace.paintRail();
    trace.paintRibbon();
    trace.paintMachine();
    trace.paintTime();
    const bool over = scene_.snapshot->link == LinkState::ended || scene_.snapshot->prompt.finished;
    if (!time_.following() && !time_.whole() && !over) {
        FittedText text(painter, *this);
        text.line(pic.plot.adjusted(look_.px(8), look_.px(4), -look_.px(8), 0), Qt::AlignRight | Qt::AlignTop,
                  tr("held here · End follows the wire again"), look_.font(TextSize::small, true), look_(Role::ink));
    }
    if (scene_.snapshot->trace.empty()) {
        FittedText text(painter, *this);
        text.line(pic.plot, Qt::AlignCenter, tr("The trace begins with the first reading."),
                  look_.font(TextSize::text), look_(Role::quietText));
    }
    if (hasFocus() && ringed_) {
        painter.setPen(QPen(look_(Role::focus), look_.px(2.5)));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(pic.plot.adjusted(-1, -1, 1, 1));
    }
}

void TraceView::focusInEvent(QFocusEvent* event) {
    ringed_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
    QWidget::focusInEvent(event);
}

void TraceView::wheelEvent(QWheelEvent* event) {
    const double notches = (event->angleDelta().y() + event->angleDelta().x()) / 120.0;
    if (event->modifiers().testFlag(Qt::ControlModifier))
        zoom(std::pow(0.8, notches));
    else
        scroll(-0.1 * notches);
    event->accept();
}

void TraceView::mousePressEvent(QMouseEvent* event) { draggedFrom_ = event->position().x(); }

void TraceView::mouseMoveEvent(QMouseEvent* event) {
    if (!event->buttons().testFlag(Qt::LeftButton)) return;
    const TracePicture pic = picture();
    scroll((draggedFrom_ - event->position().x()) / std::max(1.0, pic.plot.width()));
    draggedFrom_ = event->position().x();
}

} // namespace stillwire
