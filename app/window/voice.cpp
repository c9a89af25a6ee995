// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/voice.hpp"

#ifdef STILLWIRE_SPEECH
#include <atomic>

#include <QTextToSpeech>
#include <QThread>
#endif

namespace stillwire {

#ifdef STILLWIRE_SPEECH

// Starting a speech server takes up to seconds, so everything is done in a thread that may wait.
struct Voice::Engine {
    QThread thread;
    QObject worker; // lives in the thread, and owns the speech
    QTextToSpeech* speech = nullptr;
    std::atomic<bool> ready = false;

    explicit Engine(const QLocale& locale) {
        worker.moveToThread(&thread);
        QObject::connect(
            &thread, &QThread::finished, &worker, [this] { delete speech; }, Qt::DirectConnection);
        thread.start();
        post([this, locale] { start(locale); });
    }
    ~Engine() {
        thread.quit();
        thread.wait();
    }
    template <typename Deed> void post(Deed deed) {
        QMetaObject::invokeMethod(&worker, std::move(deed), Qt::QueuedConnection);
    }
    void start(const QLocale& locale) {
        QStringList engines = QTextToSpeech::availableEngines();
        engines.removeAll(QStringLiteral("mock")); // speaks to nobody
        if (engines.isEmpty()) return;
        speech = new QTextToSpeech(engines.front());
        if (speech->state() == QTextToSpeech::Error) return;
        for (const QLocale& spoken : speech->availableLocales()) {
            if (spoken.language() != locale.language()) continue;
            speech->setLocale(spoken);
            ready = true;
            return;
        }
    }
};

void Voice::load(const QLocale& locale) { engine_ = std::make_unique<Engine>(locale); }
bool Voice::available() const { return engine_ && engine_->ready; }

void Voice::say(const QString& text) {
    if (!available() || text.isEmpty()) return;
    engine_->post([engine = engine_.get(), text] {
        engine->speech->stop();
        engine->speech->say(text);
    });
}

void Voice::hush() {
    if (available()) engine_->post([engine = engine_.get()] { engine->speech->stop(); });
}

#else

struct Voice::Engine {};
void Voice::load(const QLocale&) {}
bool Voice::available() const { return false; }
void Voice::say(const QString&) {}
void Voice::hush() {}

#endif

Voice::Voice(QObject* parent) : QObject(parent) {}
Voice::~Voice() = default;

} // namespace stillwire
