// SPDX-License-Identifier: GPL-3.0-or-later
// The verdict as a sentence that grows, on the one dark bar of the window.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/words.hpp"

#include <QWidget>

namespace stillwire {

class VerdictBar : public QWidget {
    Q_OBJECT
public:
    explicit VerdictBar(const Look& look, QWidget* parent = nullptr);
    void show(const Scene& scene);
    void hideWords(bool hidden); // for a class that is to find it
    [[nodiscard]] QString decision() const { return decision_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double roomForReason(int width) const; // beside the decision

    const Look& look_;
    QString lead_, decision_, reason_;
    bool hidden_ = false;
};

} // namespace stillwire
