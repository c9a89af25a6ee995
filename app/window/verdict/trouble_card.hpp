// SPDX-License-Identifier: GPL-3.0-or-later
// What is in the way, or a notice, with its mend: in the place of the findings, so that nothing else moves for it.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

class QPushButton;

namespace stillwire {

class TextLabel;

class TroubleCard : public QWidget {
    Q_OBJECT
public:
    explicit TroubleCard(const Look& look, QWidget* parent = nullptr);
    void say(const QString& trouble, bool saveElsewhere); // empty hides it; with the button that mends a full disk
    [[nodiscard]] QString says() const;

signals:
    void saveElsewhereAsked();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void restyle();
    void fitType();

    const Look& look_;
    TextLabel* says_;
    QPushButton* elsewhere_;
};

} // namespace stillwire
