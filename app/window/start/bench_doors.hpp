// SPDX-License-Identifier: GPL-3.0-or-later
// The real ways into a session: serial ports, the fault bench, captures on disk.
#pragma once

#include "app/window/start/doors.hpp"
#include "meters/bench/simulated_meter.hpp"

namespace stillwire {

class BenchDoors : public Doors {
public:
    std::vector<Listed> ports() override;
    std::vector<Listed> meters() override;
    std::vector<Listed> sheets() override;
    std::vector<Listed> scenarios() override;
    Result<Opened> open(const Way& way) override;
    std::vector<PortFinding> findMeters(const std::function<void(const FindProgress&)>& told,
                                        const std::stop_token& stop) override;
    QStringList unfinished() override;
    void forgetUnfinished(const QString& path) override;

protected:
    // A place for tests to put a pace and a hand of their own.
    virtual Result<SimulatedMeter> makeMeter(const BenchScript& script, const Sheet& sheet,
                                             const MeterDescription& meter, const Way& way);

private:
    Result<Opened> openPort(const Way& way);
    Result<Opened> openSimulated(const Way& way);
    Result<Opened> openCapture(const Way& way);
};

// Captures that come with the program; empty if they are not there.
[[nodiscard]] QStringList demoCaptures();

} // namespace stillwire
