// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/link/clock.hpp"

#include <ctime>

namespace stillwire {

namespace {
Time read(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return std::chrono::duration_cast<Time>(std::chrono::seconds(now.tv_sec) + std::chrono::nanoseconds(now.tv_nsec));
}
} // namespace

Time bootTime() { return read(CLOCK_BOOTTIME); }
Time awakeTime() { return read(CLOCK_MONOTONIC); }

} // namespace stillwire
