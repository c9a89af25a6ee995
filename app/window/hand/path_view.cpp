// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/path_view.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <QFontMetricsF>

namespace stillwire {
namespace {

bool samePath(const std::vector<PathEntry>& a, const std::vector<PathEntry>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const PathEntry& x, const PathEntry& y) {
        return x.step == y.step && x.outcome == y.outcome;
    });
}

// Steps that were gone through with no number from the meter between their marks: there is nothing to tick.
std::set<Step> withoutReading(const SessionSnapshot& snapshot) {
    std::set<Step> unseen;
    std::optional<Step> open;
    Time from{0};
    const auto close = [&](Time to) {
        if (!open) return;
        bool seen = false;
        for (std::size_t i = snapshot.trace.firstAtOrAfter(from); i < snapshot.trace.size() && !seen; ++i) {
            if (snapshot.trace[i].time > to) break;
            seen = std::isfinite(snapshot.trace[i].volts_V);
        }
        if (seen)
            unseen.erase(*open);
        else
            unseen.insert(*open);
    };
    for (const Mark& mark : snapshot.marks) {
        const auto* opened = mark.as<StepMark>();
        if (!opened && !mark.as<StepEndMark>()) continue;
        close(mark.time);
        open = opened ? std::optional(opened->step) : std::nullopt;
        from = mark.time;
    }
    return unseen;
}

} // namespace

PathView::PathView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Path of steps"));
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

QSize PathView::sizeHint() const { return {look_.ipx(600), look_.ipx(30)}; }

void PathView::show(const Scene& scene) {
    if (samePath(path_, scene.snapshot->path)) return;
    path_ = scene.snapshot->path;
    unseen_ = withoutReading(*scene.snapshot);
    QStringList all;
    for (const PathEntry& entry : path_) {
        const QString name = shortStepName(entry.step);
        switch (entry.outcome) {
        case StepOutcome::done:
            all << (unseen_.count(entry.step) ? tr("%1 without a reading").arg(name) : tr("%1 done").arg(name));
            break;
        case StepOutcome::skipped: all << tr("%1 skipped").arg(name); break;
        case StepOutcome::current: all << tr("%1 now").arg(name); break;
        case StepOutcome::waiting: all << name; break;
        }
    }
    setAccessibleDescription(all.join(QStringLiteral(", ")));
    update();
}

// Where the words are too many for the room, the oldest done ones are told as a count.
std::vector<PathView::Word> PathView::wordsThatFit(double room) const {
    const double tick = look_.px(16), pad = look_.px(12);
    std::vector<Word> words;
    auto measured = [&](const QString& text, StepOutcome outcome) {
        const QFontMetricsF metrics(look_.font(TextSize::small, outcome == StepOutcome::current));
        double width = metrics.horizontalAdvance(text);
        if (outcome == StepOutcome::done) width += tick;
        if (outcome == StepOutcome::current) width += 2 * pad;
        return Word{text, outcome, width, false};
    };
    auto total = [&] {
        return std::accumulate(words.begin(), words.end(), 0.0,
                               [](double sum, const Word& w) { return sum + w.width; }) +
               look_.px(10) * static_cast<double>(words.size());
    };
    auto build = [&](std::size_t folded, std::size_t end) {
        words.clear();
        if (folded > 0) words.push_back(measured(tr("%1 done").arg(folded), StepOutcome::done));
        for (std::size_t i = folded; i < end; ++i)
            words.push_back(measured(shortStepName(path_[i].step), path_[i].outcome));
        for (std::size_t i = folded; i < end; ++i)
            words[i - folded + (folded > 0 ? 1 : 0)].unseen = unseen_.count(path_[i].step) > 0;
        if (end < path_.size()) words.push_back(measured(QStringLiteral("…"), StepOutcome::waiting));
        return total() <= room;
    };
    std::size_t past = 0;
    while (past < path_.size() &&
           (path_[past].outcome == StepOutcome::done || path_[past].outcome == StepOutcome::skipped))
        ++past;
    if (build(0, path_.size())) return words;
    for (std::size_t folded = 2; folded <= past; ++folded)
        if (build(folded, path_.size())) return words;
    for (std::size_t end = path_.size() - 1; end > past + 1; --end)
        if (build(past, end)) return words;
    return words;
}

void PathView::paintEvent(QPaintEvent*) {
    if (path_.empty()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double room = width() - look_.px(4);
    const std::vector<Word> words = wordsThatFit(room);
    double used = 0;
    for (const Word& word : words) used += word.width;
    const double gap =
        words.size() > 1 ? std::min(look_.px(40), (room - used) / static_cast<double>(words.size() - 1)) : 0;
    double x = look_.px(2);
    FittedText text(painter, *this);
    for (const Word& word : words) {
        QRectF box(x, 0.5, word.width, height() - 1.0);
        if (word.outcome == StepOutcome::current) {
            painter.setPen(QPen(look_(Role::ink), look_.px(1.5)));
            painter.setBrush(look_(Role::page));
            const QRectF ring = box.adjusted(look_.px(1), look_.px(2), -look_.px(1), -look_.px(2));
            painter.drawRoundedRect(ring, ring.height() / 2, ring.height() / 2);
            text.line(box, Qt::AlignCenter, word.text, look_.font(TextSize::small, true), look_(Role::ink));
        } else {
            QFont font = look_.font(TextSize::small);
            font.setStrikeOut(word.outcome == StepOutcome::skipped);
            if (word.outcome == StepOutcome::done) {
                drawShape(painter, QRectF(x, box.center().y() - look_.px(5), look_.px(10), look_.px(10)),
                          word.unseen ? Shape::dots : Shape::tick, look_(word.unseen ? Role::quietText : Role::good),
                          look_.px(2.2));
                box.setLeft(x + look_.px(15));
            }
            text.line(box.adjusted(0, 0, 1, 0), Qt::AlignLeft | Qt::AlignVCenter, word.text, font,
                      look_(word.outcome == StepOutcome::done ? Role::ink : Role::quietText));
        }
        x += word.width + gap;
    }
}

} // namespace stillwire
