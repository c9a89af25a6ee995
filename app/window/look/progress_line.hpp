// SPDX-License-Identifier: GPL-3.0-or-later
// How much of what a step wants is in, as a bar.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

namespace stillwire {

class ProgressLine : public QWidget {
    Q_OBJECT
public:
    explicit ProgressLine(const Look& look, QWidget* parent = nullptr);
    void show(double share); // 0 to 1
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    double share_ = 0;
};

} // namespace stillwire
