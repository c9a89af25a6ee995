// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/speaker.hpp"

#ifdef STILLWIRE_SOUND
#include "app/window/hum.hpp"

#include <algorithm>
#include <array>

#include <QAudioDevice>
#include <QAudioSink>
#include <QBuffer>
#include <QMediaDevices>
#endif

namespace stillwire {

#ifdef STILLWIRE_SOUND

namespace {

void append(QByteArray& out, float sample, const QAudioFormat& format) {
    for (int channel = 0; channel < format.channelCount(); ++channel) {
        if (format.sampleFormat() == QAudioFormat::Float) {
            out.append(reinterpret_cast<const char*>(&sample), sizeof sample);
        } else {
            const auto whole = static_cast<qint16>(sample * 32000);
            out.append(reinterpret_cast<const char*>(&whole), sizeof whole);
        }
    }
}

QByteArray bytes(const std::vector<float>& samples, const QAudioFormat& format) {
    QByteArray out;
    for (const float sample : samples) append(out, sample, format);
    return out;
}

// What the audio device draws from while the voltage is to be heard: never at its end.
class HumStream : public QIODevice {
public:
    explicit HumStream(const QAudioFormat& format) : format_(format) { open(QIODevice::ReadOnly); }
    Hum hum;
    [[nodiscard]] bool isSequential() const override { return true; }
    [[nodiscard]] qint64 bytesAvailable() const override { return format_.bytesForDuration(kAhead_us); }

    static constexpr qint64 kAhead_us = 60'000; // more would lag behind the needle

protected:
    qint64 readData(char* data, qint64 most) override {
        const qint64 frames = most / format_.bytesPerFrame();
        std::vector<float> samples(static_cast<std::size_t>(frames));
        hum.fill(samples.data(), samples.size(), format_.sampleRate());
        const QByteArray out = bytes(samples, format_);
        std::copy(out.begin(), out.end(), data);
        return out.size();
    }
    qint64 writeData(const char*, qint64) override { return -1; }

private:
    QAudioFormat format_;
};

} // namespace

struct Speaker::Device {
    QAudioFormat format;
    std::array<QByteArray, 3> tones;
    QBuffer buffer;
    std::unique_ptr<QAudioSink> sink;
    std::unique_ptr<HumStream> stream; // outlives its sink
    std::unique_ptr<QAudioSink> humming;
};

void Speaker::load() {
    // Where no sound server runs, the search for one would complain on stderr; silence is no error here.
    const QtMessageHandler before =
        qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
    const QAudioDevice output = QMediaDevices::defaultAudioOutput();
    qInstallMessageHandler(before);
    if (output.isNull()) return;
    QAudioFormat format;
    format.setSampleRate(48000);
    format.setChannelCount(1);
    format.setSampleFormat(QAudioFormat::Int16);
    if (!output.isFormatSupported(format)) format = output.preferredFormat();
    if (format.sampleFormat() != QAudioFormat::Int16 && format.sampleFormat() != QAudioFormat::Float) return;
    device_ = std::make_unique<Device>();
    device_->format = format;
    for (const Tone tone : {Tone::down, Tone::up, Tone::tick})
        device_->tones.at(static_cast<std::size_t>(tone)) = bytes(toneSamples(tone, format.sampleRate()), format);
    device_->sink = std::make_unique<QAudioSink>(output, format);
    device_->stream = std::make_unique<HumStream>(format);
    device_->humming = std::make_unique<QAudioSink>(output, format);
    device_->humming->setBufferSize(format.bytesForDuration(HumStream::kAhead_us));
}

void Speaker::play(Tone tone) {
    if (!device_) return;
    device_->sink->stop(); // the newer one matters
    device_->buffer.close();
    device_->buffer.setData(device_->tones.at(static_cast<std::size_t>(tone)));
    device_->buffer.open(QIODevice::ReadOnly);
    device_->sink->start(&device_->buffer);
}

void Speaker::hum(bool on) {
    if (!device_ || on == (device_->humming->state() != QAudio::StoppedState)) return;
    if (on)
        device_->humming->start(device_->stream.get());
    else
        device_->humming->stop();
}

void Speaker::follow(double frequency_Hz) {
    if (device_) device_->stream->hum.aim(frequency_Hz);
}

#else

struct Speaker::Device {};
void Speaker::load() {}
void Speaker::play(Tone) {}
void Speaker::hum(bool) {}
void Speaker::follow(double) {}

#endif

Speaker::Speaker(QObject* parent) : QObject(parent) {}
Speaker::~Speaker() = default;
bool Speaker::available() const { return device_ != nullptr; }

} // namespace stillwire
