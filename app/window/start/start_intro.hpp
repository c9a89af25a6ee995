// SPDX-License-Identifier: GPL-3.0-or-later
// The start page's left half: what this is, how the meter is put on, the first caution, the language.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

class QComboBox;

namespace stillwire {

class StartIntro : public QWidget {
    Q_OBJECT
public:
    explicit StartIntro(const Look& look, QWidget* parent = nullptr);

signals:
    void languageChosen(const QString& code);

private:
    void restyle();

    const Look& look_;
    QComboBox* language_;
};

} // namespace stillwire
