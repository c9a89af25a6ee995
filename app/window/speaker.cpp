// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/speaker.hpp"

#ifdef STILLWIRE_SOUND
#include <array>

#include <QAudioDevice>
#include <QAudioSink>
#include <QBuffer>
#include <QMediaDevices>
#endif

namespace stillwire {

#ifdef STILLWIRE_SOUND

namespace {

QByteArray bytes(const std::vector<float>& samples, const QAudioFormat& format) {
    QByteArray out;
    for (const float sample : samples) {
        for (int channel = 0; channel < format.channelCount(); ++channel) {
            if (format.sampleFormat() == QAudioFormat::Float) {
                out.append(reinterpret_cast<const char*>(&sample), sizeof sample);
            } else {
                const auto whole = static_cast<qint16>(sample * 32000);
                out.append(reinterpret_cast<const char*>(&whole), sizeof whole);
            }
        }
    }
    return out;
}

} // namespace

struct Speaker::Device {
    QAudioFormat format;
    std::array<QByteArray, 3> tones;
    QBuffer buffer;
    std::unique_ptr<QAudioSink> sink;
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
}

void Speaker::play(Tone tone) {
    if (!device_) return;
    device_->sink->stop(); // the newer one matters
    device_->buffer.close();
    device_->buffer.setData(device_->tones.at(static_cast<std::size_t>(tone)));
    device_->buffer.open(QIODevice::ReadOnly);
    device_->sink->start(&device_->buffer);
}

#else

struct Speaker::Device {};
void Speaker::load() {}
void Speaker::play(Tone) {}

#endif

Speaker::Speaker(QObject* parent) : QObject(parent) {}
Speaker::~Speaker() = default;
bool Speaker::available() const { return device_ != nullptr; }

} // namespace stillwire
