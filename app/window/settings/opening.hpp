// SPDX-License-Identifier: GPL-3.0-or-later
// Where the window opens the first time: whole inside what the desktop leaves free, and over all of it where that is
// little.
#pragma once

#include "app/window/look/look.hpp"

#include <QRect>

namespace stillwire {

struct Opening {
    QRect place; // without the desktop's frame
    bool maximised = false;
};

[[nodiscard]] inline Opening openingIn(const QRect& free) {
    constexpr int kTitle = 40, kSide = 8; // of a frame, as most desktops draw one
    const QSize room = free.size() - QSize(2 * kSide, kTitle + kSide);
    const QSize wanted(static_cast<int>(Look::kWidth), static_cast<int>(Look::kHeight));
    const QSize size = wanted.boundedTo(room);
    const QPoint middle((room.width() - size.width()) / 2, (room.height() - size.height()) / 2);
    return {QRect(free.topLeft() + QPoint(kSide, kTitle) + middle, size), size != wanted};
}

} // namespace stillwire
