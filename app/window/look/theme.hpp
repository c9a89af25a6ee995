// SPDX-License-Identifier: GPL-3.0-or-later
// Every colour of the window, by what it is for. Two palettes, the same roles; nothing else in app/ names a colour.
#pragma once

#include <array>
#include <vector>

#include <QByteArray>
#include <QColor>

namespace stillwire {

enum class Role {
    paper,      // right page
    page,       // left page
    plot,       // behind the trace, inside cards
    ink,        // text
    quietText,  // text of second rank
    line,       // hairlines and frames that carry nothing
    strongLine, // ticks and hatching that must be seen
    trace,
    band, // the window under test
    fault,
    faultBack,
    good,
    caution,
    cautionBack,
    hatchBack,
    bar, // the verdict's
    barText,
    barQuiet,
    quietPhase,
    wigglePhase,
    travelPhase,
    focus, // ring around what the keyboard is on
    // Grounds that differ in lightness and not only in hue, for what is caught from the corner of an eye: a fault is
    // far from the page, a caution half way, what is well is the page's own.
    loud,
    loudText,
    mid,
    midText,
};
inline constexpr int kRoleCount = 26;

class Palette {
public:
    static Palette day();
    static Palette night();

    [[nodiscard]] QColor operator[](Role role) const { return colours_[static_cast<std::size_t>(role)]; }
    // The drawings are drawn in day colours; this puts this palette's in their place.
    [[nodiscard]] QByteArray recolour(QByteArray svg) const;

private:
    std::array<QColor, kRoleCount> colours_;
};

} // namespace stillwire
