// SPDX-License-Identifier: GPL-3.0-or-later
// Opens what takes longer than a blink in the background; it can be given up.
#pragma once

#include "app/window/start/doors.hpp"

#include <atomic>

#include <QObject>
#include <QThreadPool>
#include <QTimer>

namespace stillwire {

class Opener : public QObject {
    Q_OBJECT
public:
    explicit Opener(Doors& doors, QObject* parent = nullptr);
    ~Opener() override; // waits for what is under way

    [[nodiscard]] static bool isLong(const Way& way); // likely over half a second
    void open(const Way& way);
    void giveUp();
    [[nodiscard]] bool busy() const { return timer_.isActive(); }

signals:
    void going(const QString& says, double share); // what is opened, and how much of it is read
    void opened(std::shared_ptr<stillwire::Result<stillwire::Opened>> opened, stillwire::Way way);

private:
    void tell();

    Doors& doors_;
    QThreadPool pool_;
    QTimer timer_;
    struct Reading { // shared with the thread that reads
        std::atomic<double> share = 0;
        std::atomic<bool> givenUp = false;
    };
    std::shared_ptr<Reading> reading_;
    QString what_;
    int turn_ = 0; // what comes from an earlier one is thrown away
};

} // namespace stillwire
