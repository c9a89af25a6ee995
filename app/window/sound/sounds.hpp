// SPDX-License-Identifier: GPL-3.0-or-later
// All that sounds: tones, the tone that follows the voltage, the voice; what of it is wanted, and the one mute.
#pragma once

#include "app/window/settings/settings.hpp"
#include "app/window/sound/speaker.hpp"
#include "app/window/sound/teller.hpp"
#include "app/window/sound/voice.hpp"

namespace stillwire {

class Sounds : public QObject {
    Q_OBJECT
public:
    explicit Sounds(Settings& settings, QObject* parent = nullptr);

    void load();  // slow, so after the first painted window
    void begin(); // another session
    void end();
    void hear(const Scene& scene);

    // Each turns one thing over, remembers it, and says in one line how it is now.
    QString toggleMute();
    QString toggleHum();
    QString toggleVoice();
    [[nodiscard]] bool muted() const { return settings_.muted(); }

private:
    void settle(); // starts and stops what goes on by itself
    [[nodiscard]] QString noSound() const;

    Settings& settings_;
    Speaker speaker_;
    Voice voice_;
    ToneWatch tones_;
    Teller teller_;
    bool running_ = false;
};

} // namespace stillwire
