// SPDX-License-Identifier: GPL-3.0-or-later
// What is in a stretch of samples.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>
#include <vector>

namespace stillwire::test {

inline constexpr int kRate_Hz = 48000;

// How strong a frequency is in [from_s, to_s): the amplitude of a steady tone (one term of a discrete Fourier sum).
inline double strength(const std::vector<float>& heard, double frequency_Hz, double from_s, double to_s) {
    double real = 0, imaginary = 0;
    const auto from = static_cast<std::size_t>(from_s * kRate_Hz);
    const auto to = std::min(heard.size(), static_cast<std::size_t>(to_s * kRate_Hz));
    for (std::size_t i = from; i < to; ++i) {
        const double angle = 2 * std::numbers::pi * frequency_Hz * static_cast<double>(i) / kRate_Hz;
        real += static_cast<double>(heard[i]) * std::cos(angle);
        imaginary += static_cast<double>(heard[i]) * std::sin(angle);
    }
    return to > from ? 2 * std::hypot(real, imaginary) / static_cast<double>(to - from) : 0;
}

inline double peak(const std::vector<float>& heard) {
    double most = 0;
    for (const float sample : heard) most = std::max(most, std::abs(static_cast<double>(sample)));
    return most;
}

// The largest step between two samples: a click is one far beyond what the tones themselves make.
inline double steepest(const std::vector<float>& heard) {
    double most = 0;
    for (std::size_t i = 1; i < heard.size(); ++i)
        most = std::max(most, std::abs(static_cast<double>(heard[i]) - static_cast<double>(heard[i - 1])));
    return most;
}

// Sounds with at least 50 ms of silence between them: from when to when, in seconds.
inline std::vector<std::pair<double, double>> sounds(const std::vector<float>& heard) {
    std::vector<std::pair<double, double>> found;
    for (std::size_t i = 0; i < heard.size(); ++i) {
        if (std::abs(heard[i]) < 0.01F) continue;
        const double at_s = static_cast<double>(i) / kRate_Hz;
        if (found.empty() || at_s - found.back().second > 0.05) found.emplace_back(at_s, at_s);
        found.back().second = at_s;
    }
    return found;
}

} // namespace stillwire::test
