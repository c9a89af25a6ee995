// SPDX-License-Identifier: GPL-3.0-or-later
// The start page's left half: what this is, how the meter is put on, the first caution, the language.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

class QPushButton;

namespace stillwire {

class ChoiceBox;
class DrawingView;

class StartIntro : public QWidget {
    Q_OBJECT
public:
    explicit StartIntro(const Look& look, QWidget* parent = nullptr);

signals:
    void languageChosen(const QString& code);
    void settingsAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void restyle();

    const Look& look_;
    DrawingView* drawing_;
    ChoiceBox* language_;
    QPushButton* settings_;
};

} // namespace stillwire
