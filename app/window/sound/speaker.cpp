// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/speaker.hpp"

#ifdef STILLWIRE_SOUND
#include "app/window/sound/mix_stream.hpp"
#include "app/window/sound/sound_server.hpp"
#include "app/window/sound/threads_left.hpp"

#include <atomic>
#include <functional>
#include <utility>

#include <QAudioDevice>
#include <QAudioSink>
#include <QCoreApplication>
#include <QMediaDevices>
#include <QSemaphore>
#include <QThread>
#include <QTimer>
#endif

namespace stillwire {

#ifdef STILLWIRE_SOUND

namespace {

constexpr int kRate_Hz = 48000;
constexpr qint64 kAhead_us = 150'000; // less runs dry within a tone, more lags behind the wire
constexpr int kPatience_ms = 2000, kKnock_ms = 500;
constexpr int kLook_ms = 3000; // for a device, while there is none, and whether the one there still plays
// Of a server that was lost: until Qt has found all it looks for.
constexpr int kSettle_ms = 4000;

// One for all speakers, to the end of the program: Qt's link to the sound server lives in the thread that asks first.
QThread* thread = nullptr;

QThread* speakerThread() {
    if (thread != nullptr) return thread;
    thread = new QThread;
    thread->setObjectName(QStringLiteral("speaker"));
    thread->start();
    qAddPostRoutine([] {
        thread->quit();
        if (threadsLeft || !thread->wait(kPatience_ms)) return;
        delete std::exchange(thread, nullptr);
    });
    return thread;
}

} // namespace

// The sink is always there, so that the end of its server is noticed. While nothing sounds its stream gives nothing:
// each block of silence would cost as much as one of sound.
struct Speaker::Device {
    QObject* worker = new QObject; // lives in the thread, as does all that follows but the mixer and the flags
    Mixer mixer{kRate_Hz};
    std::atomic<bool> there = false; // a device to play on
    std::atomic<bool> ending = false;
    QSemaphore ended;
    std::function<void()> found; // called in the thread
    bool running = false;
    bool woken = false;            // since the last look
    bool settling = false;         // a server is back, and Qt not yet
    std::optional<QString> server; // its socket
    std::unique_ptr<QTimer> again;
    std::unique_ptr<MixStream> stream; // outlives its sink
    std::unique_ptr<QAudioSink> sink;

    explicit Device(std::function<void()> tell) : found(std::move(tell)) {
        QObject::connect(
            worker, &QObject::destroyed, worker, [this] { ended.release(); }, Qt::DirectConnection);
        worker->moveToThread(speakerThread());
        post([this] { begin(); });
    }
    // False: the sound server does not answer, and the thread still waits for it.
    bool end() {
        ending = true;
        post([this] {
            close();
            again.reset();
            worker->deleteLater();
        });
        return ended.tryAcquire(1, kPatience_ms);
    }
    template <typename Deed> void post(Deed deed) {
        QMetaObject::invokeMethod(worker, std::move(deed), Qt::QueuedConnection);
    }
    void begin() {
        server = soundServerSocket();
        if (server && !answers(*server)) server.reset(); // then it is not that one
        again = std::make_unique<QTimer>();
        QObject::connect(again.get(), &QTimer::timeout, worker, [this] { look(); });
        look();
    }
    // A device that goes need not say so: it draws no more.
    void look() {
        settling = false;
        again->start(kLook_ms);
        const bool drawn = sink && stream->takeDrawn() > 0;
        if (sink && (sink->state() == QAudio::StoppedState || (woken && !drawn))) close();
        woken = false;
        if (sink && !drawn) wake(); // no longer than it takes to see that it draws
        if (sink) return;
        const bool before = there.exchange(!QMediaDevices::defaultAudioOutput().isNull());
        if (!there) return;
        open();
        if (!before) found();
    }
    void run(bool on) {
        if (on == running) return;
        running = on;
        close(); // at once: nothing that is still waiting is played
        if (!there || settling) return;
        open();
        again->start(kLook_ms); // to draw takes a moment
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
        stream = std::make_unique<MixStream>(mixer, format, kAhead_us);
        sink = std::make_unique<QAudioSink>(output, format);
        sink->setBufferSize(format.bytesForDuration(kAhead_us));
        QObject::connect(sink.get(), &QAudioSink::stateChanged, worker, [this](QAudio::State now) {
            if (now == QAudio::StoppedState && sink->error() != QAudio::NoError) post([this] { lost(); });
        });
        mixer.forget();
        sink->start(stream.get());
        stream->setEnough(sink->bufferSize());
        if (running)
            wake();
        else
            sink->suspend(); // else the computer would keep its sound awake
    }
    void wake() {
        if (!running || !sink) return;
        woken = true;
        stream->stir();
    }
    // Qt (6.4) asks for a server that has gone once, three seconds later and in this thread, and if it is refused
    // never again. So it does not come to ask before there is one. It may ask twice over: nothing is played between.
    void lost() {
        close();
        do QThread::msleep(kKnock_ms); // one that dies still takes calls for a moment
        while (server && !answers(*server) && !ending);
        settling = true;
        again->start(kSettle_ms);
    }
    void close() {
        if (!sink) return;
        sink->disconnect(worker);
        sink->reset();
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
    if (!device_) return;
    device_->mixer.strike(tone);
    device_->post([device = device_.get()] { device->wake(); });
}

void Speaker::hum(bool on) {
    if (device_) device_->mixer.hum(on);
}

void Speaker::follow(double frequency_Hz) {
    if (!device_) return;
    device_->mixer.follow(frequency_Hz);
    if (device_->mixer.hums()) device_->post([device = device_.get()] { device->wake(); });
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
