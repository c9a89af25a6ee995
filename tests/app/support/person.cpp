// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/person.hpp"

#include "meters/bench/faults.hpp"

#include <thread>

namespace stillwire::test {
namespace {

using namespace std::chrono_literals;

constexpr auto kPublished = 30ms; // a session tells at most every 20 ms

} // namespace

std::vector<Command> Person::obey(const Prompt& prompt, Time now) {
    const std::vector<Command> said = hand_(prompt, now);
    if (says_ == Says::byKeys) words_.insert(words_.end(), said.begin(), said.end());
    if (news_) { // the window has been told since the tick before
        news_ = false;
        std::unique_lock lock(mutex_);
        waiting_ = true;
        turn_.wait_for(lock, 60s, [this] { return !waiting_ || gone_; });
        return {};
    }
    const bool asking = prompt.question != Question::none;
    news_ = !words_.empty() || prompt.step != step_ || prompt.movingLead != leading_ || asking != asking_ ||
            prompt.finished != finished_;
    step_ = prompt.step;
    leading_ = prompt.movingLead;
    asking_ = asking;
    finished_ = prompt.finished;
    if (news_) std::this_thread::sleep_for(kPublished);
    return {};
}

std::optional<std::vector<Command>> Person::waiting() {
    const std::lock_guard lock(mutex_);
    if (!waiting_) return std::nullopt;
    return std::exchange(words_, {});
}

void Person::answered() {
    {
        const std::lock_guard lock(mutex_);
        waiting_ = false;
    }
    turn_.notify_all();
}

void Person::leave() {
    {
        const std::lock_guard lock(mutex_);
        gone_ = true;
    }
    turn_.notify_all();
}

Result<SimulatedMeter> LedDoors::makeMeter(const BenchScript& script, const Sheet& sheet,
                                           const MeterDescription& meter, const Way& way) {
    BenchScript played = script;
    if (batteryOnTheWire) {
        bench::Intermittent* fault = bench::addFault(played.setup, bench::FaultKind::harnessShortToSupply, sheet);
        fault->durationMin_s = 4; // longer than the meter takes to find a range for it
        fault->durationMax_s = 6;
        played.setup.supply_V = 12.6;
    }
    auto made = simulatedMeter(played, sheet, meter, way.seed, 0, {});
    if (!made) return made;
    person_.lend(made->hand);
    made->hand = [this](const Prompt& prompt, Time now) { return person_.obey(prompt, now); };
    return made;
}

} // namespace stillwire::test
