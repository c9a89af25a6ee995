// SPDX-License-Identifier: GPL-3.0-or-later
// Ctrl-C, a polite kill and a terminal that goes away end what runs as its own end does.
#pragma once

namespace stillwire {

void catchEndSignals(); // SIGINT, SIGTERM, SIGHUP
void leaveEndSignals(); // to the system again
[[nodiscard]] bool endAsked();

} // namespace stillwire
