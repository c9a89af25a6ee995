// SPDX-License-Identifier: GPL-3.0-or-later
// Measures whether what stands in a window has room there.
#pragma once

#include "app/window/look/look.hpp"

#include <QStringList>
#include <QTranslator>

class QWidget;

namespace stillwire::test {

// Text that does not fit where it stands, and widgets that stick out of what holds them. Paints the window first.
[[nodiscard]] QStringList cutOff(QWidget& window, const Look& look);

// Neighbours that lie over each other.
[[nodiscard]] QStringList overlaps(QWidget& window);

// What a language with longer words would need: every text of ours by a third longer, its figures untouched.
class LongerWords : public QTranslator {
public:
    using QTranslator::QTranslator;
    [[nodiscard]] bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* sourceText, const char* disambiguation, int n) const override;
};

} // namespace stillwire::test
