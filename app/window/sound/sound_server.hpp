// SPDX-License-Identifier: GPL-3.0-or-later
// Whether there is a sound server to talk to, asked without talking to it.
#pragma once

#include <optional>

#include <QString>

namespace stillwire {

// The socket of the sound server of the person's desktop, as the environment names it; nothing if it names a server
// that is reached in another way.
[[nodiscard]] std::optional<QString> soundServerSocket();
// Whether somebody listens there.
[[nodiscard]] bool answers(const QString& socket);

} // namespace stillwire
