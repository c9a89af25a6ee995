// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/sounds.hpp"

#include "app/window/sound/hum.hpp"
#include "app/window/wire/band.hpp"

#include <QSettings>

namespace stillwire {
namespace {

const QString kMute = QStringLiteral("mute"), kHum = QStringLiteral("sound/voltage"),
              kAloud = QStringLiteral("sound/prompts");

} // namespace

Sounds::Sounds(QObject* parent) : QObject(parent) {
    // With no way out there is nothing to speak through.
    connect(&speaker_, &Speaker::found, this, [this] { voice_.load(QLocale()); });
}

void Sounds::restore() {
    const QSettings settings;
    muted_ = settings.value(kMute, false).toBool();
    hum_ = settings.value(kHum, false).toBool();
    aloud_ = settings.value(kAloud, true).toBool();
}

void Sounds::load() {
    speaker_.load();
    settle();
}

void Sounds::begin() {
    tones_.reset();
    teller_.reset();
    running_ = true;
    settle();
}

void Sounds::end() {
    running_ = false;
    voice_.hush();
    settle();
}

void Sounds::hear(const Scene& scene) {
    const std::optional<Tone> tone = tones_.hear(scene);
    const QString words = teller_.hear(scene);
    const bool live = scene.snapshot->guided && !scene.snapshot->prompt.finished && scene.sheet;
    const bool onSignal = live && wireUnderTest(*scene.snapshot) == Wire::signal;
    speaker_.follow(onSignal ? humFrequency_Hz(scene.snapshot->lastVolts_V, scene.sheet->nominal_V) : 0);
    if (muted_) return;
    if (tone) speaker_.play(*tone);
    if (aloud_) voice_.say(words);
}

void Sounds::settle() {
    speaker_.run(running_ && !muted_);
    speaker_.hum(hum_);
}

QString Sounds::noSound() const {
    return speaker_.available() ? QString()
                                : tr("This computer has no sound output. Everything that would sound is shown.");
}

QString Sounds::toggleMute() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    muted_ = !muted_;
    QSettings().setValue(kMute, muted_);
    if (muted_) voice_.hush();
    settle();
    return muted_ ? tr("Muted: no tone, no voice. M sounds again.") : tr("Sound is on.");
}

QString Sounds::toggleHum() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    hum_ = !hum_;
    QSettings().setValue(kHum, hum_);
    settle();
    return hum_ ? tr("A tone follows the voltage. V ends it.") : tr("No tone follows the voltage.");
}

QString Sounds::toggleVoice() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    if (!voice_.available())
        return tr("No voice for this language is installed. Everything that would be spoken is shown.");
    aloud_ = !aloud_;
    QSettings().setValue(kAloud, aloud_);
    if (!aloud_) voice_.hush();
    return aloud_ ? tr("Prompts are spoken. L ends it.") : tr("Prompts are shown, and not spoken.");
}

} // namespace stillwire
