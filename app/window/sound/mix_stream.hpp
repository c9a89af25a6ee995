// SPDX-License-Identifier: GPL-3.0-or-later
// What an audio device draws from: the mixer's samples in the device's format. A tone shorter than the device's
// buffer never begins by itself, so silence follows it; after enough of that nothing does, and the device's sink
// draws no more until it is stirred. So the next tone has no silence waiting before it.
#pragma once

#ifdef STILLWIRE_SOUND

#include "app/window/sound/mixer.hpp"

#include <vector>

#include <QAudioFormat>
#include <QIODevice>

namespace stillwire {

// Every call from the thread that plays.
class MixStream : public QIODevice {
public:
    MixStream(Mixer& mixer, const QAudioFormat& format, qint64 ahead_us);
    [[nodiscard]] bool isSequential() const override { return true; }
    [[nodiscard]] qint64 bytesAvailable() const override { return format_.bytesForDuration(ahead_us_); }

    [[nodiscard]] qint64 takeDrawn(); // bytes since the last time
    // Of silence: as much as the device's buffer takes. Gives none before it is stirred.
    void setEnough(qint64 bytes) { enough_ = silence_ = bytes; }
    // Begins again, with a moment of silence: a device that wakes may swallow its first milliseconds.
    void stir();

protected:
    qint64 readData(char* data, qint64 most) override;
    qint64 writeData(const char*, qint64) override { return -1; }

private:
    [[nodiscard]] bool quiet() const { return silence_ >= enough_; }
    char* put(char* at, float sample) const;

    Mixer& mixer_;
    const QAudioFormat format_;
    const qint64 ahead_us_;
    std::vector<float> samples_;
    qint64 drawn_ = 0;     // bytes
    qint64 silence_ = 0;   // bytes since the last sound
    qint64 enough_ = 0;    // bytes
    std::size_t lead_ = 0; // frames of silence still to go before the mixer
};

} // namespace stillwire

#endif
