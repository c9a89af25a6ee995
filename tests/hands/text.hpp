// SPDX-License-Identifier: GPL-3.0-or-later
// Formatted text.
#pragma once

#include <string>

namespace stillwire::hands {

[[nodiscard]] std::string text(const char* pattern, ...) __attribute__((format(printf, 1, 2)));

} // namespace stillwire::hands
