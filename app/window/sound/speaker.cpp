// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/speaker.hpp"

#ifdef STILLWIRE_SOUND
#include "app/window/sound/mixer.hpp"
#include "app/window/sound/threads_left.hpp"

#include <algorithm>
#include <atomic>
#include <cstring>
#include <functional>
#include <utility>
#include <vector>

#include <QAudioDevice>
#include <QAudioSink>
#include <QMediaDevices>
#include <QThread>
#include <QTimer>
#endif

namespace stillwire {

#ifdef STILLWIRE_SOUND

namespace {

constexpr int kRate_Hz = 48000;
constexpr qint64 kAhead_us = 60'000; // more would lag behind the needle
constexpr unsigned long kPatience_ms = 2000;
constexpr int kLook_ms = 2000; // for a device, while there is none, and whether the one there is still plays

// What the audio device draws from, never at its end. A tone shorter than the device's buffer never begins by itself,
// so silence is played too.
class MixStream : public QIODevice {
public:
    MixStream(Mixer& mixer, const QAudioFormat& format) : mixer_(mixer), format_(format) {
        open(QIODevice::ReadOnly);
    }
    [[nodiscard]] bool isSequential() const override { return true; }
    [[nodiscard]] qint64 bytesAvailable() const override { return format_.bytesForDuration(kAhead_us); }

    qint64 takeDrawn() { return std::exchange(drawn_, 0); } // bytes since the last time

protected:
    qint64 readData(char* data, qint64 most) override {
        const auto frames = static_cast<std::size_t>(most / format_.bytesPerFrame());
        samples_.resize(frames);
        mixer_.fill(samples_.data(), frames);
        char* at = data;
        for (const float sample : samples_)
            for (int channel = 0; channel < format_.channelCount(); ++channel) at = put(at, sample);
        drawn_ += at - data;
        return at - data;
    }
    qint64 writeData(const char*, qint64) override { return -1; }

private:
    char* put(char* at, float sample) const {
        if (format_.sampleFormat() == QAudioFormat::Float) {
            std::memcpy(at, &sample, sizeof sample);
            return at + sizeof sample;
        }
        const auto whole = static_cast<qint16>(std::clamp(sample, -1.0F, 1.0F) * 32767);
        std::memcpy(at, &whole, sizeof whole);
        return at + sizeof whole;
    }

    Mixer& mixer_;
    QAudioFormat format_;
    std::vector<float> samples_;
    qint64 drawn_ = 0;
};

} // namespace

struct Speaker::Device {
    QThread thread;
    QObject worker; // lives in the thread, as does all that follows but the mixer and the flags
    Mixer mixer{kRate_Hz};
    std::atomic<bool> there = false; // a device to play on
    std::function<void()> found;     // called in the thread
    bool running = false;
    std::unique_ptr<QTimer> again;
    std::unique_ptr<MixStream> stream; // outlives its sink
    std::unique_ptr<QAudioSink> sink;

    explicit Device(std::function<void()> tell) : found(std::move(tell)) {
        thread.setObjectName(QStringLiteral("speaker"));
        worker.moveToThread(&thread);
        QObject::connect(
            &thread, &QThread::finished, &worker,
            [this] {
                close();
                again.reset();
            },
            Qt::DirectConnection);
        thread.start();
        post([this] { look(); });
    }
    // False: the sound server does not answer, and the thread still waits for it.
    bool end() {
        thread.quit();
        return thread.wait(kPatience_ms);
    }
    template <typename Deed> void post(Deed deed) {
        QMetaObject::invokeMethod(&worker, std::move(deed), Qt::QueuedConnection);
    }

    // A device that goes need not say so: it draws no more.
    void look() {
        if (!again) {
            again = std::make_unique<QTimer>();
            QObject::connect(again.get(), &QTimer::timeout, &worker, [this] { look(); });
            again->start(kLook_ms);
        }
        if (sink && stream->takeDrawn() == 0) close();
        if (sink) return;
        const bool before = there.exchange(!QMediaDevices::defaultAudioOutput().isNull());
        if (!there) return;
        if (!before) found();
        if (running) open();
    }
    void run(bool on) {
        running = on;
        if (!on) return close();
        if (there && !sink) open();
    }
    void open() {
        const QAudioDevice output = QMediaDevices::defaultAudioOutput();
        QAudioFormat format;
        format.setSampleRate(kRate_Hz);
        format.setChannelCount(1);
        format.setSampleFormat(QAudioFormat::Int16);
        if (!output.isFormatSupported(format)) {
            format = output.preferredFormat();
            format.setSampleRate(kRate_Hz);
            if (format.sampleFormat() != QAudioFormat::Float) format.setSampleFormat(QAudioFormat::Int16);
        }
        stream = std::make_unique<MixStream>(mixer, format);
        sink = std::make_unique<QAudioSink>(output, format);
        sink->setBufferSize(format.bytesForDuration(kAhead_us));
        mixer.forget();
        sink->start(stream.get());
    }
    void close() {
        if (sink) sink->reset(); // at once: nothing that is still waiting is played
        sink.reset();
        stream.reset();
    }
};

void Speaker::load() {
    if (!device_)
        device_ = std::make_unique<Device>(
            [this] { QMetaObject::invokeMethod(this, &Speaker::found, Qt::QueuedConnection); });
}

bool Speaker::available() const { return device_ && device_->there; }

Speaker::~Speaker() {
    // A window closes in time; what cannot be ended is left to the end of the program.
    if (!device_ || device_->end()) return;
    threadsLeft = true;
    static_cast<void>(device_.release());
}

void Speaker::run(bool on) {
    if (device_) device_->post([device = device_.get(), on] { device->run(on); });
}

void Speaker::play(Tone tone) {
    if (device_) device_->mixer.strike(tone);
}

void Speaker::hum(bool on) {
    if (device_) device_->mixer.hum(on);
}

void Speaker::follow(double frequency_Hz) {
    if (device_) device_->mixer.follow(frequency_Hz);
}

#else

struct Speaker::Device {};
void Speaker::load() {}
bool Speaker::available() const { return false; }
void Speaker::run(bool) {}
void Speaker::play(Tone) {}
void Speaker::hum(bool) {}
void Speaker::follow(double) {}
Speaker::~Speaker() = default;

#endif

Speaker::Speaker(QObject* parent) : QObject(parent) {}

} // namespace stillwire
