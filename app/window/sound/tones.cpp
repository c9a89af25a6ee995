// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/tones.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillwire {
namespace {

struct Note {
    double frequency_Hz, for_s, loud;
};

// How loud they are leaves room for a voice at the same time: the sound server adds them up.
constexpr double kRamp_s = 0.005;

std::vector<Note> notes(Tone tone) {
    switch (tone) {
    case Tone::down: return {{905, 0.09, 0.5}, {405, 0.16, 0.5}};
    case Tone::up: return {{615, 0.06, 0.5}, {885, 0.06, 0.5}, {1365, 0.10, 0.5}};
    case Tone::tick: break;
    }
    return {{1130, 0.03, 0.2}};
}

} // namespace

std::vector<float> toneSamples(Tone tone, int rate_Hz) {
    std::vector<float> samples;
    double phase = 0; // runs on from note to note
    for (const Note& note : notes(tone)) {
        const auto count = static_cast<int>(note.for_s * rate_Hz);
        const double ramp = kRamp_s * rate_Hz;
        for (int i = 0; i < count; ++i) {
            const double edge = std::min({1.0, i / ramp, (count - 1 - i) / ramp});
            samples.push_back(static_cast<float>(note.loud * edge * std::sin(phase)));
            phase += 2 * std::numbers::pi * note.frequency_Hz / rate_Hz;
        }
    }
    return samples;
}

std::optional<Tone> ToneWatch::hear(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    if (!snapshot.guided) return std::nullopt;
    std::optional<Tone> heard;
    if (snapshot.prompt.asked && snapshot.prompt.asked->since != pose_) {
        pose_ = snapshot.prompt.asked->since;
        heard = Tone::tick;
    }
    std::size_t dropouts = 0;
    std::optional<Direction> newest;
    for (const Excursion& e : snapshot.findings->excursions) {
        if (e.kind != ExcursionKind::dropout) continue;
        ++dropouts;
        newest = e.direction;
    }
    if (dropouts > dropouts_) heard = newest == Direction::up ? Tone::up : Tone::down;
    dropouts_ = dropouts;
    return heard;
}

} // namespace stillwire
