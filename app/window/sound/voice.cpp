// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/voice.hpp"

#ifdef STILLWIRE_SPEECH
#include "app/window/sound/threads_left.hpp"

#include <algorithm>
#include <atomic>
#include <utility>

#include <QTextToSpeech>
#include <QThread>
#include <QVoice>
#endif

namespace stillwire {

#ifdef STILLWIRE_SPEECH

namespace {

constexpr unsigned long kPatience_ms = 2000;
// Full volume is full scale already: with a tone over it that would clip. Half leaves room for both.
constexpr double kVolume = 0.5;

// An engine may hold several accents of one language, and its own first choice need not be the common one: the
// plainest name is.
void chooseVoice(QTextToSpeech& speech) {
    const QList<QVoice> voices = speech.availableVoices();
    const auto plainest = std::min_element(voices.begin(), voices.end(), [](const QVoice& a, const QVoice& b) {
        return a.name().size() < b.name().size();
    });
    if (plainest != voices.end()) speech.setVoice(*plainest);
}

} // namespace

// Starting a speech server takes up to seconds, so everything is done in a thread that may wait, in the order asked:
// what is said before the server is there is said once it is.
struct Voice::Engine {
    QThread thread;
    QObject worker; // lives in the thread, and owns the speech
    QTextToSpeech* speech = nullptr;
    std::atomic<bool> ready = false;
    std::atomic<int> asked = 0; // what was asked before the newest is not said any more

    explicit Engine(const QLocale& locale) {
        thread.setObjectName(QStringLiteral("voice"));
        worker.moveToThread(&thread);
        QObject::connect(
            &thread, &QThread::finished, &worker, [this] { delete speech; }, Qt::DirectConnection);
        thread.start();
        post([this, locale] { start(locale); });
    }
    // False: the server does not answer, and the thread still waits for it.
    bool end() {
        ++asked;
        thread.quit();
        return thread.wait(kPatience_ms);
    }
    template <typename Deed> void post(Deed deed) {
        QMetaObject::invokeMethod(&worker, std::move(deed), Qt::QueuedConnection);
    }
    void say(const QString& text) { // empty: nothing any more
        post([this, text, turn = ++asked] {
            if (!ready || turn != asked) return;
            speech->stop();
            if (!text.isEmpty()) speech->say(text);
        });
    }
    void start(const QLocale& locale) {
        QStringList engines = QTextToSpeech::availableEngines();
        engines.removeAll(QStringLiteral("mock")); // speaks to nobody
        if (engines.isEmpty()) return;
        speech = new QTextToSpeech(engines.front());
        if (speech->state() == QTextToSpeech::Error) return;
        QList<QLocale> spoken = speech->availableLocales();
        spoken.removeIf([&locale](const QLocale& l) { return l.language() != locale.language(); });
        if (spoken.isEmpty()) return;
        speech->setLocale(spoken.contains(locale) ? locale : spoken.front());
        chooseVoice(*speech);
        speech->setVolume(kVolume);
        ready = true;
    }
};

void Voice::load(const QLocale& locale) {
    if (engine_) return;
    engine_ = std::make_unique<Engine>(locale);
    if (!early_.isEmpty()) engine_->say(std::exchange(early_, {}));
}

bool Voice::available() const { return engine_ && engine_->ready; }

void Voice::say(const QString& text) {
    if (text.isEmpty()) return;
    if (engine_)
        engine_->say(text);
    else
        early_ = text;
}

void Voice::hush() {
    early_.clear();
    if (engine_) engine_->say({});
}

Voice::~Voice() {
    // A window closes in time; what cannot be ended is left to the end of the program.
    if (!engine_ || engine_->end()) return;
    threadsLeft = true;
    static_cast<void>(engine_.release());
}

#else

struct Voice::Engine {};
void Voice::load(const QLocale&) {}
bool Voice::available() const { return false; }
void Voice::say(const QString&) {}
void Voice::hush() {}
Voice::~Voice() = default;

#endif

Voice::Voice(QObject* parent) : QObject(parent) {}

} // namespace stillwire
