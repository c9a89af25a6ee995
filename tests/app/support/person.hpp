// SPDX-License-Identifier: GPL-3.0-or-later
// The simulated hand in front of the real window: what it does to the sensor it does on the bench, what it would say
// it says with keys. The session's thread waits for each key, so a run is the same on a fast and on a slow machine.
#pragma once

#include "app/window/start/bench_doors.hpp"

#include <condition_variable>
#include <mutex>
#include <optional>

namespace stillwire::test {

class Person {
public:
    enum class Says { byKeys, nothing };
    explicit Person(Says says) : says_(says) {}

    using Hand = std::function<std::vector<Command>(const Prompt&, Time)>;
    void lend(Hand hand) { hand_ = std::move(hand); }
    // On the session's thread, at every tick.
    std::vector<Command> obey(const Prompt& prompt, Time now);

    // On the test's thread: what the person would say once the window shows where the run is; none while there is
    // nothing new. answered() lets the session go on.
    [[nodiscard]] std::optional<std::vector<Command>> waiting();
    void answered();
    void leave(); // lets the session go on for ever

private:
    Says says_;
    Hand hand_;
    std::vector<Command> words_;
    bool news_ = false;
    std::optional<Step> step_;
    bool leading_ = false, asking_ = false, finished_ = false;

    std::mutex mutex_;
    std::condition_variable turn_;
    bool waiting_ = false, gone_ = false;
};

// The real doors, with the person's hand on the simulated meter, and as fast as the person allows.
class LedDoors : public BenchDoors {
public:
    explicit LedDoors(Person& person) : person_(person) {}
    bool batteryOnTheWire = false; // the third section of the harness is chafed through to the battery's wire

protected:
    Result<SimulatedMeter> makeMeter(const BenchScript& script, const Sheet& sheet, const MeterDescription& meter,
                                     const Way& way) override;

private:
    Person& person_;
};

} // namespace stillwire::test
