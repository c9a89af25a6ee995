// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/mixer.hpp"

#include <cmath>

namespace stillwire {
namespace {

constexpr double kDies_s = 0.002;

} // namespace

Mixer::Mixer(int rate_Hz)
    : rate_Hz_(rate_Hz), tones_{toneSamples(Tone::down, rate_Hz), toneSamples(Tone::up, rate_Hz),
                                toneSamples(Tone::tick, rate_Hz)} {}

void Mixer::strike(Tone tone) {
    int nothing = -1;
    if (tone == Tone::tick)
        struck_.compare_exchange_strong(nothing, static_cast<int>(tone));
    else
        struck_ = static_cast<int>(tone);
}

bool Mixer::fill(float* samples, std::size_t count) {
    hum_.aim(humming_ ? at_.load() : 0);
    const bool hums = hum_.fill(samples, count, rate_Hz_);
    const std::vector<float>* tick = &tones_[static_cast<std::size_t>(Tone::tick)];
    const int struck = struck_.exchange(-1);
    const std::vector<float>* next = struck < 0 ? nullptr : &tones_[static_cast<std::size_t>(struck)];
    if (next == tick && playing_ != nullptr && playing_ != tick) next = nullptr;
    if (next != nullptr) {
        if (playing_ != nullptr && position_ > 0) left_ += (*playing_)[position_ - 1];
        playing_ = next;
        position_ = 0;
    }
    const auto dies = static_cast<float>(std::exp(-1 / (kDies_s * rate_Hz_)));
    if (std::abs(left_) < 1e-6F) left_ = 0;
    if (playing_ == nullptr && left_ == 0) return hums;
    for (std::size_t i = 0; i < count; ++i) {
        left_ *= dies;
        samples[i] += left_;
        if (playing_ == nullptr) continue;
        samples[i] += (*playing_)[position_++];
        if (position_ == playing_->size()) playing_ = nullptr;
    }
    return true;
}

} // namespace stillwire
