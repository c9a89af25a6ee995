// SPDX-License-Identifier: GPL-3.0-or-later
// A link: where bytes come from. Two makes: a serial port, the simulated meter.
#pragma once

#include "core/base/result.hpp"
#include "core/base/time.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>

namespace stillwire {

// What a wait brought. `bytes` counts what was put into the caller's buffer, all of which arrived at `arrived`
// (CLOCK_BOOTTIME for a live link; the link's own time for a simulated one). `nothing` from a link
// without a descriptor may have moved its clock: the session then ticks.
struct LinkEvent {
    enum class Kind { bytes, nothing, lost, ended };
    Kind kind = Kind::nothing;
    std::size_t bytes = 0;
    Time arrived{0};
};

// Used by one thread at a time.
class Link {
public:
    virtual ~Link() = default;

    // Again after a loss: finds the adapter by its USB identity if it came back under another name.
    [[nodiscard]] virtual Status open() = 0; // error: port, cause and the command that mends it
    // A descriptor to poll for readability; -1 if the link has none (or lost it) and read() itself tells.
    [[nodiscard]] virtual int descriptor() const = 0;
    // Never blocks. Bytes with different arrival times come in different events.
    virtual LinkEvent read(std::span<std::uint8_t> buffer) = 0;
    [[nodiscard]] virtual Status write(std::span<const std::uint8_t> bytes) = 0;
    // Time of this link's clock: CLOCK_BOOTTIME, or the simulated time.
    [[nodiscard]] virtual Time now() const = 0;
    // How long to wait in poll before asking again, for a link without a descriptor to wait on; negative: for ever.
    [[nodiscard]] virtual Time nextDue() const = 0;
    [[nodiscard]] virtual std::string name() const = 0; // the port, or "simulated meter"
};

} // namespace stillwire
