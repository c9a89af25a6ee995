// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/mix_stream.hpp"

#ifdef STILLWIRE_SOUND

#include <algorithm>
#include <cstring>
#include <utility>

namespace stillwire {
namespace {

constexpr qint64 kLead_us = 20'000;

} // namespace

MixStream::MixStream(Mixer& mixer, const QAudioFormat& format, qint64 ahead_us)
    : mixer_(mixer), format_(format), ahead_us_(ahead_us) {
    open(QIODevice::ReadOnly);
}

qint64 MixStream::takeDrawn() { return std::exchange(drawn_, 0); }

void MixStream::stir() {
    const bool before = quiet();
    silence_ = 0;
    if (!before) return;
    lead_ = static_cast<std::size_t>(format_.framesForDuration(kLead_us));
    emit readyRead();
}

qint64 MixStream::readData(char* data, qint64 most) {
    if (quiet()) return 0;
    const auto frames = static_cast<std::size_t>(most / format_.bytesPerFrame());
    samples_.assign(frames, 0.0F);
    const std::size_t lead = std::min(std::exchange(lead_, 0), frames);
    const bool sounds = mixer_.fill(samples_.data() + lead, frames - lead);
    char* at = data;
    for (const float sample : samples_)
        for (int channel = 0; channel < format_.channelCount(); ++channel) at = put(at, sample);
    drawn_ += at - data;
    silence_ = sounds ? 0 : silence_ + (at - data);
    return at - data;
}

char* MixStream::put(char* at, float sample) const {
    if (format_.sampleFormat() == QAudioFormat::Float) {
        std::memcpy(at, &sample, sizeof sample);
        return at + sizeof sample;
    }
    const auto whole = static_cast<qint16>(std::clamp(sample, -1.0F, 1.0F) * 32767);
    std::memcpy(at, &whole, sizeof whole);
    return at + sizeof whole;
}

} // namespace stillwire

#endif
