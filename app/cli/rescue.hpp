// SPDX-License-Identifier: GPL-3.0-or-later
// What becomes of a recording that the disk did not take to its end.
#pragma once

#include "meters/session/session.hpp"

#include <string>

namespace stillwire {

// Of a session that is over: done if every row is in `output`. Else the whole capture is saved from memory into the
// person's data folder, and the error says what happened and where it lies now.
[[nodiscard]] Status recordedWhole(Session& session, const std::string& output);

} // namespace stillwire
