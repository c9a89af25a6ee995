// SPDX-License-Identifier: GPL-3.0-or-later
// A session that shows what a test puts into it, and remembers what it was asked.
#pragma once

#include "app/language/say.hpp"
#include "app/window/start/doors.hpp"
#include "meters/session/session.hpp"
#include "tests/app/support/moments.hpp"

#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace stillwire {
class BenchWindow;
}

namespace stillwire::test {

class FakeSession : public Session {
public:
    explicit FakeSession(std::shared_ptr<SessionSnapshot> snapshot) : snapshot_(std::move(snapshot)) {}

    std::shared_ptr<const SessionSnapshot> snapshot() const override { return snapshot_; }
    void command(Command command) override { commands.push_back(command); }
    void mark(std::string text) override { marks.push_back(std::move(text)); }
    void saveTo(std::string path) override { savedTo = std::move(path); }
    bool running() const override { return running_; }
    void stop() override { running_ = false; }

    void show(std::shared_ptr<SessionSnapshot> snapshot) {
        snapshot->sequence = snapshot_->sequence + 1;
        snapshot_ = std::move(snapshot);
    }

    std::vector<Command> commands;
    std::vector<std::string> marks;
    std::string savedTo;

private:
    std::shared_ptr<SessionSnapshot> snapshot_;
    bool running_ = true;
};

// Put before the window as if it had been opened, with the lever's sheet; the window keeps it.
FakeSession* attachTo(BenchWindow& window, std::shared_ptr<SessionSnapshot> snapshot,
                      std::function<void()> strike = {});

class FakeDoors : public Doors {
public:
    std::vector<Listed> ports() override { return portList; }
    std::vector<Listed> meters() override { return {{"text-line-logger", sayName("Text-line logger"), {}}}; }
    std::vector<Listed> sheets() override {
        return {{"cleaner-depth-lever", sayName("Beach cleaner depth lever"), {}},
                {"resurfacer-drive-pedal", sayName("Resurfacer drive pedal"), {}}};
    }
    std::vector<Listed> scenarios() override {
        return {{"depth-lever", sayName("Depth lever, fretting connector"), {}},
                {"good-pedal", sayName("Good pedal"), {}}};
    }
    Result<Opened> open(const Way& way) override;
    std::vector<PortFinding> findMeters(const std::function<void(const FindProgress&)>& told,
                                        const std::stop_token& stop) override;

    QStringList unfinished() override { return cutShort; }
    void forgetUnfinished(const QString& path) override { cutShort.removeAll(path); }

    QStringList cutShort;
    std::vector<Listed> portList = {{"/dev/ttyUSB0", "ttyUSB0", "USB serial"}};
    std::vector<Way> opened;
    std::vector<PortFinding> found; // what a search comes to
    bool endless = false;           // it goes on until it is stopped
};

// A meter that the search is sure of, at 2400 baud and 0.812 V.
[[nodiscard]] PortFinding foundMeter(const char* port, const char* name, bool asDescribed);

} // namespace stillwire::test
