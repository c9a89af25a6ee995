// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/drawing_view.hpp"

#include "app/window/look/typeface.hpp"

#include <QCoreApplication>
#include <QFile>
#include <QPainter>

namespace stillwire {
namespace {

struct DrawingText { // gives the labels of the drawings a context of their own
    Q_DECLARE_TR_FUNCTIONS(DrawingText)
};
QByteArray label(const QString& text) { return text.toHtmlEscaped().toUtf8(); }

} // namespace

QByteArray drawingSvg(const QString& name, const QString& side, const Palette& palette) {
    QFile file(QStringLiteral(":/drawings/%1.svg").arg(name));
    if (name.isEmpty() || !file.open(QIODevice::ReadOnly)) return {};
    QByteArray svg = file.readAll();
    const std::pair<const char*, QByteArray> labels[] = {
        {"{reference}", label(DrawingText::tr("reference"))},
        {"{signal}", label(DrawingText::tr("signal"))},
        {"{ground}", label(DrawingText::tr("ground"))},
        {"{red}", label(DrawingText::tr("red lead"))},
        {"{black}", label(DrawingText::tr("black lead"))},
        {"{battery}", label(DrawingText::tr("battery"))},
        {"{stop}", label(DrawingText::tr("stop"))},
        {"{released}", label(DrawingText::tr("released"))},
        {"{pressed}", label(DrawingText::tr("pressed"))},
        {"{off}", label(DrawingText::tr("key off"))},
        {"{harness side}", label(DrawingText::tr("harness side"))},
        {"{plugged}", label(DrawingText::tr("stays plugged in"))},
        {"{hands off}", label(DrawingText::tr("hands off"))},
        {"{slowly}", label(DrawingText::tr("slowly"))},
        {"{again}", label(DrawingText::tr("again"))},
    };
    for (const auto& [token, text] : labels) svg.replace(token, text);
    const QByteArray lit = palette[Role::trace].name().toLatin1(), dim = palette[Role::strongLine].name().toLatin1();
    svg.replace("B612", typefaceFamily().toHtmlEscaped().toUtf8());
    svg = palette.recolour(svg);
    for (const char* way : {"left", "right", "in", "out", "tap"}) {
        const bool wanted = side == QLatin1String(way), others = !side.isEmpty() && !wanted;
        svg.replace(QByteArray("{") + way + " colour}", others ? dim : lit);
        svg.replace(QByteArray("{") + way + " stroke}", wanted ? "8" : "5");
    }
    return svg;
}

DrawingView::DrawingView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Drawing of the step"));
    connect(&look, &Look::changed, this, [this] {
        kept_.clear();
        updateGeometry();
        update();
    });
}

void DrawingView::show(const QString& name, const QString& side, const QString& described) {
    if (name == name_ && side == side_) return;
    name_ = name;
    side_ = side;
    setAccessibleDescription(described);
    update();
}

// The lit side changes with every pose: each picture is made once and kept.
const QPixmap& DrawingView::picture(QSize size) {
    QPixmap& kept = kept_[name_ + QLatin1Char('/') + side_];
    const QSize pixels = size * devicePixelRatioF();
    if (kept.size() == pixels) return kept;
    const QByteArray svg = drawingSvg(name_, side_, look_.palette());
    if (svg.isEmpty()) // load() of nothing complains; an empty picture says it better
        renderer_.load(QByteArrayLiteral("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 1 1'/>"));
    else
        renderer_.load(svg);
    renderer_.setAspectRatioMode(Qt::KeepAspectRatio); // loading forgets it
    kept = QPixmap(pixels);
    kept.setDevicePixelRatio(devicePixelRatioF());
    kept.fill(Qt::transparent);
    QPainter painter(&kept);
    painter.setRenderHint(QPainter::Antialiasing);
    renderer_.render(&painter, QRectF(QPointF(0, 0), QSizeF(size)));
    return kept;
}

// Higher than its picture it would only be empty.
void DrawingView::resizeEvent(QResizeEvent* event) {
    setMaximumHeight(qRound(width() * 232.0 / 316));
    QWidget::resizeEvent(event);
}

QSize DrawingView::sizeHint() const { return {look_.ipx(316), look_.ipx(232)}; }
QSize DrawingView::minimumSizeHint() const { return {look_.ipx(100), look_.ipx(least_)}; }

void DrawingView::setLeast(double height) {
    if (height == least_) return;
    least_ = height;
    updateGeometry();
}

void DrawingView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look_(Role::line), 1));
    painter.setBrush(look_(Role::paper));
    const QRectF frame = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.drawRoundedRect(frame, look_.px(8), look_.px(8));
    const int in = look_.ipx(6);
    const QSize size = this->size() - QSize(2 * in, 2 * in);
    if (size.isEmpty()) return;
    painter.drawPixmap(QPoint(in, in), picture(size));
}

} // namespace stillwire
