// SPDX-License-Identifier: GPL-3.0-or-later
// The look in force: palette, type and the unit everything is measured in. One per window, handed to every view.
#pragma once

#include "app/window/look/theme.hpp"

#include <algorithm>

#include <QFont>
#include <QObject>
#include <QPalette>
#include <QSize>

namespace stillwire {

// Three sizes for reading near, three for three metres.
enum class TextSize { small, text, title, word, state, number };

class Look : public QObject {
    Q_OBJECT
public:
    explicit Look(QObject* parent = nullptr);

    [[nodiscard]] QColor operator()(Role role) const { return palette_[role]; }
    [[nodiscard]] const Palette& palette() const { return palette_; }
    [[nodiscard]] bool night() const { return night_; }
    void setNight(bool night);

    // Sizes are given for a window of 1280x800 and grow with it. In a smaller one they stay: type is read from as far
    // away on a small screen, so the pages give up other things. No page is asked to do with less than kLeast of the
    // design, whatever the size of the type.
    static constexpr double kWidth = 1280, kHeight = 800, kLeastWidth = 960, kLeastHeight = 600;
    enum class Type { usual, large, largest };
    [[nodiscard]] double px(double design) const { return design * unit_; }
    [[nodiscard]] int ipx(double design) const { return qRound(design * unit_); }
    [[nodiscard]] double unit() const { return unit_; }
    [[nodiscard]] int ring() const { return std::max(2, ipx(2.5)); } // around what has the keyboard
    void fitTo(QSize window);
    void setType(Type type);
    [[nodiscard]] bool calm() const { return calm_; } // nothing moves that need not
    void setCalm(bool calm);

    [[nodiscard]] QFont font(TextSize size, bool bold = false) const;
    // A face whose digits are exactly this high, in pixels.
    [[nodiscard]] QFont digits(double height) const;

    [[nodiscard]] QPalette widgetPalette() const;
    [[nodiscard]] QString styleSheet() const;

signals:
    void changed();

private:
    Palette palette_ = Palette::day();
    bool night_ = false;
    bool calm_ = false;
    QSize window_{1280, 800};
    Type type_ = Type::usual;
    double unit_ = 1;
    QString family_;
};

} // namespace stillwire
