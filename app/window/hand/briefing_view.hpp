// SPDX-License-Identifier: GPL-3.0-or-later
// Before a lead is clipped on there is no trace to look at: its place tells what has to be safe first.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/look.hpp"

#include <QWidget>

namespace stillwire {

class BriefingView : public QWidget {
    Q_OBJECT
public:
    explicit BriefingView(const Look& look, QWidget* parent = nullptr);
    void show(const QStringList& cautions);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    QStringList cautions_;
};

} // namespace stillwire
