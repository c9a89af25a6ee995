// SPDX-License-Identifier: GPL-3.0-or-later
// All that sounds: tones, the tone that follows the voltage, the voice; what of it is wanted, and the one mute.
#pragma once

#include "app/window/sound/speaker.hpp"
#include "app/window/sound/teller.hpp"
#include "app/window/sound/voice.hpp"

namespace stillwire {

class Sounds : public QObject {
    Q_OBJECT
public:
    explicit Sounds(QObject* parent = nullptr);

    void restore(); // what was wanted, from QSettings
    void load();    // slow, so after the first painted window
    void begin();   // another session
    void end();
    void hear(const Scene& scene);

    // Each turns one thing over, remembers it, and says in one line how it is now.
    QString toggleMute();
    QString toggleHum();
    QString toggleVoice();
    [[nodiscard]] bool muted() const { return muted_; }

private:
    void settle(); // starts and stops what goes on by itself
    [[nodiscard]] QString noSound() const;

    Speaker speaker_;
    Voice voice_;
    ToneWatch tones_;
    Teller teller_;
    bool muted_ = false, hum_ = false, aloud_ = true, running_ = false;
};

} // namespace stillwire
