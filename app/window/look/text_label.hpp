// SPDX-License-Identifier: GPL-3.0-or-later
// A label in the look's type and colours, wrapping, hidden while it has nothing to say.
#pragma once

#include "app/window/look/look.hpp"

#include <QLabel>
#include <QStringList>

namespace stillwire {

class TextLabel : public QLabel {
    Q_OBJECT
public:
    TextLabel(const Look& look, TextSize size, bool bold, Role colour, QWidget* parent = nullptr);
    void say(const QString& text);            // empty hides the label
    void sayInTurn(const QStringList& deeds); // numbered, one under the other
    void setSize(TextSize size);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void restyle();
    void setInTurn();

    const Look& look_;
    TextSize size_;
    bool bold_;
    QStringList deeds_; // said in turn; none: said plainly
    Role colour_;
};

} // namespace stillwire
