// SPDX-License-Identifier: GPL-3.0-or-later
// Serial ports: which there are, and a link over one.
#pragma once

#include "meters/describe/description.hpp"
#include "meters/link/link.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillwire {

// What tells one adapter from another, whatever name it comes back under.
struct UsbIdentity {
    int vendor = 0, product = 0;
    std::string serial;                     // may be empty
    [[nodiscard]] std::string text() const; // "ffff:0001:EXAMPLE", which `makeSerialLink` takes in place of a name
    friend bool operator==(const UsbIdentity&, const UsbIdentity&) = default;
};

struct PortInfo {
    std::string name; // "/dev/ttyUSB0"
    std::string description;
    std::optional<UsbIdentity> usb; // absent: no USB adapter
};

[[nodiscard]] std::vector<PortInfo> listPorts(); // ordered by name

// "ffff:0001" or "ffff:0001:EXAMPLE", in hexadecimal; nothing: it is a name. The vendor of the examples, all ones, is
// what an empty memory reads as: it is no maker's, so that no adapter can be meant by them.
[[nodiscard]] std::optional<UsbIdentity> parseUsbIdentity(std::string_view text);
// The port among `ports` that has this identity; of several alike the one called `preferred`. `anySerial`: one of the
// make will do.
[[nodiscard]] std::optional<std::string> portOf(const UsbIdentity& identity, const std::vector<PortInfo>& ports,
                                                const std::string& preferred, bool anySerial);

// Not opened yet. `port` is a name or a USB identity. Loss is told by a read of nothing after poll() said ready, or
// by an error; then the port is closed, descriptor() is -1, and open() looks for the same adapter.
[[nodiscard]] std::unique_ptr<Link> makeSerialLink(std::string port, LinkSettings settings);

// The sentence for a port that did not open, by errno; `busyWith` names who holds it, if known.
[[nodiscard]] Error portError(const std::string& port, int cause, const std::string& busyWith = {});

} // namespace stillwire
