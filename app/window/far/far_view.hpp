// SPDX-License-Identifier: GPL-3.0-or-later
// The whole bench for somebody three metres away: number and state, what the hand does, what is counted down, the
// verdict; each at least a twentieth of the window high. Cautions are large while they are new, else a line.
#pragma once

#include "app/window/far/far_words.hpp"
#include "app/window/look/caution_memory.hpp"
#include "app/window/look/paint.hpp"

#include <QWidget>

namespace stillwire {

class ReadoutView;

class FarView : public QWidget {
    Q_OBJECT
public:
    FarView(const Look& look, QWidget* parent);
    // `trouble`: what is in the way, or a notice; it stands in the folded line's place.
    void show(const Scene& scene, const CautionMemory& cautions, const QString& trouble, bool verdictHidden);
    void setShown(bool shown);
    // Of the capitals of everything that has to be read from there; a share of the window's height.
    [[nodiscard]] double capitals() const { return height() * kShare; }
    static constexpr double kShare = 0.052;

signals:
    void near(); // a click brings the near view back

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    struct Words {
        QStringList instruction, cautions; // cautions: only those that are new
        QString pose, wanted, lead, verdict, folded;
        bool stop = false;
        friend bool operator==(const Words&, const Words&) = default;
    };
    void paintCautions(QPainter& painter, FittedText& text, const QRectF& box);
    void place();
    double line(FittedText& text, double y, const QString& words, Role role);

    const Look& look_;
    ReadoutView* readout_;
    Words words_;
};

} // namespace stillwire
