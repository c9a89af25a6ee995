// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/wire/aim_view.hpp"

#include "app/language/say.hpp"
#include "app/window/look/paint.hpp"
#include "app/window/wire/axes.hpp"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QFontMetricsF>

namespace stillwire {
namespace {

struct AimText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(AimText)
};
QString V(double volts_V, int decimals = 2) { return QString::fromStdString(volts(volts_V, decimals)); }

std::optional<double> lastUnturned(const PositionLevel& position) {
    for (auto visit = position.visits.rbegin(); visit != position.visits.rend(); ++visit)
        if (visit->step != Step::adjust) return visit->raw_V;
    return std::nullopt;
}

} // namespace

void LevelsBefore::watch(const Findings& findings) {
    std::map<std::string, double> seen;
    for (const PositionLevel& position : findings.positions) {
        const std::optional<double> level_V = lastUnturned(position);
        if (!level_V) return; // levels of one setting only
        seen[position.name] = *level_V;
    }
    if (!seen.empty()) raw_V_ = std::move(seen);
}

std::optional<double> LevelsBefore::of(const std::string& position) const {
    const auto found = raw_V_.find(position);
    return found == raw_V_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<AimFigures> aimFigures(const Scene& scene, const LevelsBefore& before) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Prompt& prompt = snapshot.prompt;
    if (!scene.sheet || prompt.step != Step::adjust || !prompt.aim_V || !std::isfinite(snapshot.lastVolts_V))
        return {};
    const Findings& found = *snapshot.findings;
    const Sheet& sheet = *scene.sheet;
    auto shown = [&](const Window& window) {
        return Window{shownVolts(window.min_V, sheet, found), shownVolts(window.max_V, sheet, found)};
    };
    AimFigures figures;
    figures.aim_V = *prompt.aim_V;
    figures.within_V = prompt.aimWithin_V;
    figures.now_V = snapshot.lastVolts_V;
    figures.window_V = shown(sheet.rest().window);
    if (found.adjustment.voltsPerTurn_V)
        figures.perTurn_V = shownVolts(*found.adjustment.voltsPerTurn_V, sheet, found) - shownVolts(0, sheet, found);
    const std::optional<double> restBefore_V = before.of(sheet.rest().name);
    for (const Position& p : sheet.positions) {
        const std::optional<double> before_V = before.of(p.name);
        if (p.name == sheet.rest().name || !before_V || !restBefore_V) continue;
        const auto share = found.adjustment.share.find(p.name);
        const double moves = share == found.adjustment.share.end() ? 1.0 : share->second;
        figures.others.push_back(
            {sayName(p.name), *before_V + moves * (figures.now_V - *restBefore_V), shown(p.window)});
    }
    return figures;
}

QString aimSays(const AimFigures& figures) {
    if (figures.there()) return AimText::tr("On the aim: stop, tighten");
    const QString by = V(std::abs(figures.off_V()), 3);
    return figures.off_V() > 0 ? AimText::tr("Up by %1").arg(by) : AimText::tr("Down by %1").arg(by);
}

QString perTurnSays(const AimFigures& figures) {
    if (!figures.perTurn_V || std::abs(*figures.perTurn_V) < 1e-4) return {};
    return AimText::tr("one part-turn moves it by %1").arg(V(*figures.perTurn_V, 3));
}

QString turnsSay(const AimFigures& figures) {
    if (figures.there() || perTurnSays(figures).isEmpty()) return {};
    const double turns = figures.off_V() / *figures.perTurn_V;
    const QString count = QString::fromStdString(plain(std::abs(turns), 1));
    return turns > 0 ? AimText::tr("about %1 more part-turns, the way of T").arg(count)
                     : AimText::tr("about %1 more part-turns, the way of Shift+T").arg(count);
}

QString otherEndSays(const OtherEnd& end, int decimals) {
    const QString where =
        AimText::tr("%1 to %2")
            .arg(QString::fromStdString(plain(end.window_V.min_V, decimals)), V(end.window_V.max_V, decimals));
    return end.inside()
               ? AimText::tr("%1 would be %2, inside %3").arg(end.name, V(end.predicted_V, decimals), where)
               : AimText::tr("%1 would be %2, outside %3").arg(end.name, V(end.predicted_V, decimals), where);
}

AimView::AimView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(AimText::tr("Aim while turning"));
    hide();
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void AimView::show(const Scene& scene) {
    before_.watch(*scene.snapshot->findings);
    figures_ = aimFigures(scene, before_);
    setVisible(figures_.has_value());
    if (!figures_) return;
    QStringList all{aimSays(*figures_), perTurnSays(*figures_), turnsSay(*figures_)};
    for (const OtherEnd& end : figures_->others) all << otherEndSays(end);
    setAccessibleDescription(all.join(QStringLiteral(". ")));
    update();
}

QSize AimView::sizeHint() const { return {look_.ipx(600), look_.ipx(162)}; }

void AimView::paintEvent(QPaintEvent*) {
    if (!figures_) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool there = figures_->there();
    const double stroke = look_.px(there ? 3.5 : 2);
    painter.setPen(QPen(look_(there ? Role::good : Role::trace), stroke));
    painter.setBrush(look_(Role::plot));
    painter.drawRoundedRect(QRectF(rect()).adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2), look_.px(8),
                            look_.px(8));
    const QRectF in = QRectF(rect()).adjusted(look_.px(18), look_.px(8), -look_.px(18), -look_.px(6));
    FittedText text(painter, *this);
    const double icon = look_.px(30);
    const QRectF iconBox(in.left(), in.top() + look_.px(9), icon, icon);
    // Which way, as a shape: a wedge that points there, a tick when done.
    drawShape(painter, iconBox, there ? Shape::tick : (figures_->off_V() > 0 ? Shape::wedgeUp : Shape::wedgeDown),
              look_(there ? Role::good : Role::trace), look_.px(5));
    const double half = in.left() + in.width() * (there ? 0.6 : 0.54);
    const QRectF place(iconBox.right() + look_.px(14), in.top(), half - iconBox.right() - look_.px(14), look_.px(48));
    const QString aim = aimSays(*figures_);
    // The one thing to steer by, read from the sensor: as large as there is room.
    TextSize size = TextSize::state;
    for (const TextSize smaller : {TextSize::word, TextSize::title})
        if (QFontMetricsF(look_.font(size, true)).horizontalAdvance(aim) > place.width() * 1.15) size = smaller;
    const QRectF title = text.line(place, Qt::AlignLeft | Qt::AlignVCenter, aim, look_.font(size, true),
                                   look_(there ? Role::good : Role::ink));
    QStringList lines;
    for (const OtherEnd& end : figures_->others) lines << otherEndSays(end);
    for (const QString& turns : {perTurnSays(*figures_), turnsSay(*figures_)})
        if (!turns.isEmpty()) lines << turns;
    const double row = look_.px(21), left = std::min(half, title.right() + look_.px(14)) + look_.px(10);
    double y = in.top() + std::max(0.0, (look_.px(50) - row * static_cast<double>(lines.size())) / 2);
    const QFontMetricsF metrics(look_.font(TextSize::text));
    const double room = (in.right() - left) * 1.2; // what FittedText can take in by making it smaller
    const bool cramped = std::any_of(lines.begin(), lines.end(),
                                     [&](const QString& l) { return metrics.horizontalAdvance(l) > room; });
    if (cramped && in.width() < look_.px(640)) { // how many turns are left goes before what one of them does
        lines.removeAll(perTurnSays(*figures_));
        text.paragraph(QRectF(left, in.top(), in.right() - left, look_.px(64)), lines.join(QStringLiteral(". ")),
                       look_.font(TextSize::small), look_(Role::ink));
        lines.clear();
    } else if (cramped) {
        text.paragraph(QRectF(left, in.top(), in.right() - left, look_.px(64)), lines.join(QStringLiteral(". ")),
                       look_.font(TextSize::small), look_(Role::ink));
        lines.clear();
    }
    for (const QString& line : lines) {
        text.line(QRectF(left, y, in.right() - left, row), Qt::AlignLeft | Qt::AlignVCenter, line,
                  look_.font(TextSize::text), look_(Role::ink));
        y += row;
    }
    paintScale(painter, QRectF(in.left(), in.top() + look_.px(66), in.width(), in.height() - look_.px(66)));
}

// A level scale of volts with the window, the aim, what is near enough, and the reading of now.
void AimView::paintScale(QPainter& painter, const QRectF& box) {
    const AimFigures& f = *figures_;
    const double reach =
        std::max({f.window_V.max_V - f.aim_V, f.aim_V - f.window_V.min_V, std::abs(f.off_V())}) * 1.15;
    const TimeAxis axis{f.aim_V - reach, f.aim_V + reach, box.left(), box.right()}; // the same arithmetic, of volts
    const QRectF bar(box.left(), box.top() + look_.px(22), box.width(), look_.px(30));
    painter.fillRect(bar, look_(Role::page));
    const double from = axis.x(f.window_V.min_V), to = axis.x(f.window_V.max_V);
    painter.fillRect(QRectF(from, bar.top(), to - from, bar.height()), look_(Role::band));
    painter.setPen(QPen(look_(Role::trace), look_.px(1.5), Qt::DotLine));
    for (const double x : {from, to}) painter.drawLine(QPointF(x, bar.top()), QPointF(x, bar.bottom()));
    const double near = std::max(look_.px(3), axis.x(f.aim_V + f.within_V) - axis.x(f.aim_V));
    const double middle = axis.x(f.aim_V);
    painter.setPen(QPen(look_(Role::ink), look_.px(2.5)));
    painter.setBrush(look_(Role::plot));
    painter.drawRect(QRectF(middle - near, bar.top() - look_.px(3), 2 * near, bar.height() + look_.px(6)));
    FittedText text(painter, *this);
    const QFont small = look_.font(TextSize::small);
    const double below = bar.bottom() + look_.px(5), row = look_.px(20), wide = look_.px(150);
    text.line(QRectF(middle - wide / 2, below, wide, row), Qt::AlignCenter, AimText::tr("aim %1").arg(V(f.aim_V, 3)),
              look_.font(TextSize::small, true), look_(Role::ink));
    for (const double edge_V : {f.window_V.min_V, f.window_V.max_V}) {
        const double x = std::clamp(axis.x(edge_V), box.left() + look_.px(30), box.right() - look_.px(30));
        if (std::abs(x - middle) < wide * 0.6) continue;
        text.line(QRectF(x - look_.px(40), below, look_.px(80), row), Qt::AlignCenter, V(edge_V), small,
                  look_(Role::quietText));
    }
    const double now = axis.x(f.now_V), tip = bar.top() + look_.px(16), size = look_.px(17);
    painter.setPen(QPen(look_(Role::plot), look_.px(1.5)));
    painter.setBrush(look_(Role::ink));
    painter.drawPolygon(
        QPolygonF{{now, tip}, {now - size * 0.8, tip - 2 * size}, {now + size * 0.8, tip - 2 * size}});
}

} // namespace stillwire
