// SPDX-License-Identifier: GPL-3.0-or-later
// Contrast as WCAG 2.2 defines it, and colours as people with a colour-vision deficiency see them.
#pragma once

#include <cmath>

#include <QColor>

namespace stillwire::test {

inline double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}
inline double encoded(double channel) {
    channel = std::min(1.0, std::max(0.0, channel));
    return channel <= 0.0031308 ? 12.92 * channel : 1.055 * std::pow(channel, 1 / 2.4) - 0.055;
}

// WCAG 2.2, definition of relative luminance.
inline double luminance(const QColor& c) {
    return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}
// WCAG 2.2, definition of contrast ratio.
inline double contrast(const QColor& a, const QColor& b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

// Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color vision deficiency" (2009),
// table for severity 1.0, applied to linear RGB. The figures are from memory; each row adds up to 1, as it must for
// greys to stay grey, and a test says so.
struct Deficiency {
    const char* name;
    double m[3][3];
};
inline constexpr Deficiency kDeficiencies[] = {
    {"protanopia",
     {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
    {"deuteranopia",
     {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
    {"tritanopia",
     {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
};
inline QColor seenWith(const Deficiency& d, const QColor& c) {
    const double in[3] = {linear(c.redF()), linear(c.greenF()), linear(c.blueF())};
    double out[3];
    for (int i = 0; i < 3; ++i) out[i] = encoded(d.m[i][0] * in[0] + d.m[i][1] * in[1] + d.m[i][2] * in[2]);
    return QColor::fromRgbF(static_cast<float>(out[0]), static_cast<float>(out[1]), static_cast<float>(out[2]));
}

} // namespace stillwire::test
