// SPDX-License-Identifier: GPL-3.0-or-later
// What the system says about a file, as a sentence with its mend.
#pragma once

#include "core/base/result.hpp"

#include <string>

namespace stillwire {

enum class Deed { open, read, create, write, save, rewrite };

// `code` is errno's value.
[[nodiscard]] Error fileError(const std::string& path, Deed deed, int code);

} // namespace stillwire
