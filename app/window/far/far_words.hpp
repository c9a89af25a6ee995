// SPDX-License-Identifier: GPL-3.0-or-later
// What is said so large that it is read from three metres: in few letters, for a line holds twenty-eight of them.
#pragma once

#include "app/window/feed.hpp"

#include <QStringList>

namespace stillwire {

inline constexpr int kFarLetters = 28, kFarLines = 2; // of the instruction

// Two lines at most, parted where a person would.
[[nodiscard]] QStringList farInstruction(const Prompt& prompt);

// The hands are on the sensor or the harness, and nothing is asked that a key would answer.
[[nodiscard]] bool handsBusy(const Prompt& prompt);

} // namespace stillwire
