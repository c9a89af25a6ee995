// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/sounds.hpp"

#include "app/window/sound/hum.hpp"
#include "app/window/wire/band.hpp"

namespace stillwire {
Sounds::Sounds(Settings& settings, QObject* parent) : QObject(parent), settings_(settings) {
    connect(&settings, &Settings::changed, this, &Sounds::settle);
    // With no way out there is nothing to speak through.
    connect(&speaker_, &Speaker::found, this, [this] { voice_.load(QLocale()); });
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
    if (muted()) return;
    if (tone) speaker_.play(*tone);
    if (settings_.aloud()) voice_.say(words);
}

void Sounds::settle() {
    if (muted() || !settings_.aloud()) voice_.hush();
    speaker_.run(running_ && !muted());
    speaker_.hum(settings_.hum());
}

QString Sounds::noSound() const {
    return speaker_.available() ? QString()
                                : tr("This computer has no sound output. Everything that would sound is shown.");
}

QString Sounds::toggleMute() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    settings_.setMuted(!settings_.muted());
    return muted() ? tr("Muted: no tone, no voice. M sounds again.") : tr("Sound is on.");
}

QString Sounds::toggleHum() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    settings_.setHum(!settings_.hum());
    return settings_.hum() ? tr("A tone follows the voltage. V ends it.") : tr("No tone follows the voltage.");
}

QString Sounds::toggleVoice() {
    if (const QString none = noSound(); !none.isEmpty()) return none;
    if (!voice_.available())
        return tr("No voice for this language is installed. Everything that would be spoken is shown.");
    settings_.setAloud(!settings_.aloud());
    return settings_.aloud() ? tr("Prompts are spoken. L ends it.") : tr("Prompts are shown, and not spoken.");
}

} // namespace stillwire
