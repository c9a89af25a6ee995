// SPDX-License-Identifier: GPL-3.0-or-later
// The verdict in the number's place once a run is over: read at three metres, with why under it.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/paint.hpp"

#include <QWidget>

namespace stillwire {

class VerdictHead : public QWidget {
    Q_OBJECT
public:
    explicit VerdictHead(const Look& look, QWidget* parent = nullptr);
    void show(const Scene& scene);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    Shape shape_ = Shape::dots;
    Role colour_ = Role::ink;
    QString decision_, condition_, reason_;
};

} // namespace stillwire
