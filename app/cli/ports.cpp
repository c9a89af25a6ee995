// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "meters/link/serial_link.hpp"

#include <iomanip>
#include <iostream>

namespace stillwire {

Status runPorts() {
    const std::vector<PortInfo> ports = listPorts();
    if (ports.empty()) std::cout << "No port was found. Plug the meter's adapter in and look again.\n";
    // The identity stays when the name changes: an adapter that is put back may come as another name.
    for (const PortInfo& p : ports)
        std::cout << std::left << std::setw(24) << p.name << std::setw(32) << (p.usb ? p.usb->text() : "")
                  << p.description << "\n";
    return Done{};
}

} // namespace stillwire
