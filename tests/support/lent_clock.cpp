// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/lent_clock.hpp"

#include "meters/link/clock.hpp"

#include <ctime>
#include <mutex>

namespace stillwire {

namespace {

struct Clock {
    std::mutex mutex;
    Time real{0}, shown{0}; // at the last change of speed
    int speed = 1;
};

Clock& clockOf(clockid_t id) {
    static Clock boot, awake;
    return id == CLOCK_BOOTTIME ? boot : awake;
}

Time realTime(clockid_t id) {
    timespec now{};
    clock_gettime(id, &now);
    return std::chrono::duration_cast<Time>(std::chrono::seconds(now.tv_sec) + std::chrono::nanoseconds(now.tv_nsec));
}

Time shownTime(clockid_t id) {
    Clock& clock = clockOf(id);
    const std::lock_guard lock(clock.mutex);
    return clock.shown + (realTime(id) - clock.real) * clock.speed;
}

} // namespace

Time bootTime() { return shownTime(CLOCK_BOOTTIME); }
Time awakeTime() { return shownTime(CLOCK_MONOTONIC); }

void lent::setClockSpeed(int speed) {
    for (const clockid_t id : {CLOCK_BOOTTIME, CLOCK_MONOTONIC}) {
        const Time shown = shownTime(id);
        Clock& clock = clockOf(id);
        const std::lock_guard lock(clock.mutex);
        clock.real = realTime(id);
        clock.shown = shown;
        clock.speed = speed;
    }
}

namespace {
void step(clockid_t id, Time ahead) {
    Clock& clock = clockOf(id);
    const std::lock_guard lock(clock.mutex);
    clock.shown += ahead;
}
} // namespace

void lent::passBy(Time passed) {
    step(CLOCK_MONOTONIC, passed); // first: the other way round it might be taken for a sleep
    step(CLOCK_BOOTTIME, passed);
}

void lent::sleepFor(Time slept) { step(CLOCK_BOOTTIME, slept); }

} // namespace stillwire
