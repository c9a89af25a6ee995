// SPDX-License-Identifier: GPL-3.0-or-later
// What stands behind the verdict, whole: why, what else it could be, what to do next, what was not tested.
#pragma once

#include "app/window/look/look.hpp"
#include "core/findings/findings.hpp"

#include <QScrollArea>

class QLabel;

namespace stillwire {

class VerdictDetails : public QScrollArea {
    Q_OBJECT
public:
    explicit VerdictDetails(const Look& look, QWidget* parent = nullptr);
    void show(const Findings& findings);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void keepToTheText();
    void restyle();

    const Look& look_;
    QLabel* text_;
};

} // namespace stillwire
