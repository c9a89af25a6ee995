// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/theme.hpp"

#include <initializer_list>

namespace stillwire {
namespace {

struct RoleColours {
    Role role;
    const char* day;
    const char* night;
};

constexpr RoleColours kColours[] = {
    {Role::paper, "#F7F4EC", "#10181E"},       {Role::page, "#ECE6D8", "#18242C"},
    {Role::plot, "#FFFFFF", "#0A1116"},        {Role::ink, "#14212B", "#F4F0E6"},
    {Role::quietText, "#3A4751", "#BFC9CF"},   {Role::line, "#CFC9BA", "#33434E"},
    {Role::strongLine, "#857E70", "#7C8A93"},  {Role::trace, "#0B4573", "#8FCBF2"},
    {Role::band, "#BFDDEE", "#17384D"},        {Role::fault, "#7A2800", "#FFB893"},
    {Role::faultBack, "#FBE6DB", "#3B1B0B"},   {Role::good, "#005540", "#74DDB8"},
    {Role::caution, "#6E4700", "#F7D38C"},     {Role::cautionBack, "#FFF3D6", "#33270C"},
    {Role::hatchBack, "#EDE8DB", "#1D2930"},   {Role::bar, "#14212C", "#2B3E4B"},
    {Role::barText, "#FFFFFE", "#FFFFFE"},     {Role::barQuiet, "#E8E2D3", "#E8E2D4"},
    {Role::quietPhase, "#E4EEE9", "#172C2A"},  {Role::wigglePhase, "#E3E6F2", "#232A45"},
    {Role::travelPhase, "#F3EAD2", "#2E2917"}, {Role::focus, "#0B4574", "#8FCBF3"},
    {Role::loud, "#3B1300", "#FFD9C4"},        {Role::loudText, "#FFFDF9", "#1B0B02"},
    {Role::mid, "#E3B34C", "#6A4A12"},         {Role::midText, "#14212A", "#FFF7E4"},
};
static_assert(std::size(kColours) == kRoleCount);

} // namespace

Palette Palette::day() {
    Palette palette;
    for (const RoleColours& c : kColours) palette.colours_[static_cast<std::size_t>(c.role)] = QColor(c.day);
    return palette;
}

Palette Palette::night() {
    Palette palette;
    for (const RoleColours& c : kColours) palette.colours_[static_cast<std::size_t>(c.role)] = QColor(c.night);
    return palette;
}

QByteArray Palette::recolour(QByteArray svg) const {
    // By way of a placeholder: one palette's paper may be another's ink.
    for (const RoleColours& c : kColours)
        svg.replace(c.day, "@role" + QByteArray::number(static_cast<int>(c.role)) + ";");
    for (const RoleColours& c : kColours)
        svg.replace("@role" + QByteArray::number(static_cast<int>(c.role)) + ";",
                    (*this)[c.role].name(QColor::HexRgb).toLatin1());
    return svg;
}

} // namespace stillwire
