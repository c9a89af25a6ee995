// SPDX-License-Identifier: GPL-3.0-or-later
// What came from a port, before anybody knows what it is.
#pragma once

#include "core/base/time.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace stillwire {

struct Heard {
    struct Arrival {
        Time at{0};
        std::size_t bytes = 0;
    };
    std::vector<std::uint8_t> bytes;
    std::vector<Arrival> arrivals; // in order; their bytes add up to all

    void add(std::span<const std::uint8_t> more, Time at) {
        bytes.insert(bytes.end(), more.begin(), more.end());
        arrivals.push_back({at, more.size()});
    }
};

} // namespace stillwire
