// SPDX-License-Identifier: GPL-3.0-or-later
// Waiting for what another thread does.
#pragma once

#include <chrono>
#include <thread>

namespace stillwire {

// Does it hold before the time is up? The limit is for what went wrong, never a figure of the program.
template <class Condition> bool within(std::chrono::milliseconds limit, const Condition& holds) {
    const auto end = std::chrono::steady_clock::now() + limit;
    while (!holds()) {
        if (std::chrono::steady_clock::now() > end) return false;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return true;
}

} // namespace stillwire
