// SPDX-License-Identifier: GPL-3.0-or-later
// A drop-down for hands in gloves: its list shows every entry whole, one frame around them, the chosen one ticked,
// and rolling the wheel over it closed changes nothing.
#pragma once

#include "app/window/look/look.hpp"

#include <QComboBox>

namespace stillwire {

class ChoiceBox : public QComboBox {
    Q_OBJECT
public:
    ChoiceBox(const Look& look, const QString& name, QWidget* parent);
    void showPopup() override;

protected:
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void restyle();

    const Look& look_;
};

} // namespace stillwire
