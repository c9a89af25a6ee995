// SPDX-License-Identifier: GPL-3.0-or-later
// What becomes of a recording that the disk did not take to its end, or of which nothing came.
#pragma once

#include "meters/session/session.hpp"

#include <string>

namespace stillwire {

// Of a session that is over: done if every row is in `output`. Else the whole capture is saved from memory into the
// person's data folder, and the error says what happened and where it lies now.
[[nodiscard]] Status recordedWhole(Session& session, const std::string& output);

// Of a session that is over: done if a reading came. Else its capture, which tells nothing and would stand in the way
// of the next try, is taken away, and the error says so.
[[nodiscard]] Status recordedSomething(Session& session, const std::string& port);

} // namespace stillwire
