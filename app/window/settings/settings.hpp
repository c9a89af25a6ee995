// SPDX-License-Identifier: GPL-3.0-or-later
// What a person has chosen for the window, remembered from one day to the next: the one place that knows these keys
// of QSettings. The language is app/language's, for the report speaks it too.
#pragma once

#include "app/window/look/look.hpp"

#include <QObject>
#include <QString>

namespace stillwire {

class Settings : public QObject {
    Q_OBJECT
public:
    enum class Follow { desktop, no, yes }; // as the desktop has it, until told

    explicit Settings(QObject* parent = nullptr);

    [[nodiscard]] Follow night() const { return night_; }
    void setNight(Follow night);
    [[nodiscard]] Follow calm() const { return calm_; } // nothing moves that need not
    void setCalm(Follow calm);
    [[nodiscard]] Look::Type type() const { return type_; }
    void setType(Look::Type type);
    [[nodiscard]] bool muted() const { return muted_; }
    void setMuted(bool muted);
    [[nodiscard]] bool hum() const { return hum_; } // a tone that follows the voltage
    void setHum(bool hum);
    [[nodiscard]] bool aloud() const { return aloud_; }
    void setAloud(bool aloud);
    [[nodiscard]] bool farByItself() const { return farByItself_; } // large words once the hands are busy
    void setFarByItself(bool far);
    [[nodiscard]] QString captures() const { return captures_; } // folder; empty: the person's data folder
    void setCaptures(const QString& folder);

signals:
    void changed();

private:
    Follow night_, calm_;
    Look::Type type_;
    bool muted_, hum_, aloud_, farByItself_;
    QString captures_;
};

} // namespace stillwire
