// SPDX-License-Identifier: GPL-3.0-or-later
// The ways into a session, as the start page offers them. The window knows only this; tests put their own behind it.
#pragma once

#include "core/base/result.hpp"
#include "core/sheet/sheet.hpp"
#include "meters/find/find_meter.hpp"
#include "meters/session/session.hpp"

#include <functional>
#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

namespace stillwire {

struct Listed {
    QString id;    // what `open` takes
    QString title; // what the person reads
    QString detail;
};

struct Way {
    enum class Kind { port, simulated, capture };
    Kind kind = Kind::simulated;
    QString port, meter, sheet, scenario;  // ids
    QString referencePort, referenceMeter; // of a second meter, on the reference wire; no port: none
    QString path;                          // of a capture
    double speed = 1;                      // of a simulated meter or a replay; 0: as fast as it goes
    std::uint64_t seed = 1;
    // While a capture is opened, from the thread that opens it: the share of the file read; false gives it up.
    std::function<bool(double share)> told{};
};

struct Opened {
    std::unique_ptr<Session> session;
    std::shared_ptr<const Sheet> sheet;
    QString name;                   // of the port, the scenario or the file
    QString notes;                  // one line about it, may be empty
    double length_s = 0;            // of a capture, 0: not known before it ends
    std::function<void()> strike{}; // a dropout made on the simulated meter; empty: there is none to make one on
    QString warning{};              // for the person on the bench, may be empty
};

class Doors {
public:
    virtual ~Doors() = default;
    [[nodiscard]] virtual std::vector<Listed> ports() = 0;
    [[nodiscard]] virtual std::vector<Listed> meters() = 0;
    [[nodiscard]] virtual std::vector<Listed> sheets() = 0;
    [[nodiscard]] virtual std::vector<Listed> scenarios() = 0;
    [[nodiscard]] virtual Result<Opened> open(const Way& way) = 0;
    // Looks for a meter on every port; `told` is called from the calling thread, which may be any.
    [[nodiscard]] virtual std::vector<PortFinding> findMeters(const std::function<void(const FindProgress&)>& told,
                                                              const std::stop_token& stop) = 0;
    // Captures of runs that nobody ended, because the program or the computer stopped under them; the oldest first.
    // Each is told until it is forgotten.
    [[nodiscard]] virtual QStringList unfinished() { return {}; }
    virtual void forgetUnfinished(const QString&) {} // opened, or put aside
};

} // namespace stillwire
