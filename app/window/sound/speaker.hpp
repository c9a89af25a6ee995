// SPDX-License-Identifier: GPL-3.0-or-later
// Plays what the mixer mixes on the default audio device, in a thread of its own that may wait for one. Built without
// Qt Multimedia, or without a device, it stays silent; a device that comes, or goes, is followed.
#pragma once

#include "app/window/sound/tones.hpp"

#include <memory>

#include <QObject>

namespace stillwire {

class Speaker : public QObject {
    Q_OBJECT
public:
    explicit Speaker(QObject* parent = nullptr);
    ~Speaker() override;

    void load(); // asks for the device; slow, so after the first painted window
    [[nodiscard]] bool available() const;
    void run(bool on); // while off nothing sounds, and nothing is computed
    void play(Tone tone);
    void hum(bool on);                // the tone that follows the voltage
    void follow(double frequency_Hz); // what it is to follow; 0: nothing

signals:
    void found(); // there is a device now

private:
    struct Device;
    std::unique_ptr<Device> device_;
};

} // namespace stillwire
