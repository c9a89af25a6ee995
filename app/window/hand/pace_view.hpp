// SPDX-License-Identifier: GPL-3.0-or-later
// The pace of a pose: its word, how long it is held, and a bead that travels there. The only motion beside the trace.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/paint.hpp"

#include <QTimer>
#include <QWidget>

namespace stillwire {

class PaceView : public QWidget {
    Q_OBJECT
public:
    PaceView(const Look& look, const Feed& feed, QWidget* parent = nullptr);
    void show(const Prompt& prompt);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double beadX() const;
    void advance();

    const Look& look_;
    const Feed& feed_;
    QString word_;
    double since_s_ = 0, for_s_ = 0, shown_x_ = 0;
    QTimer motion_;
};

} // namespace stillwire
