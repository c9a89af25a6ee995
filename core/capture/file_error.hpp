// SPDX-License-Identifier: GPL-3.0-or-later
// What the system says about a file, as a sentence with its mend.
#pragma once

#include "core/base/result.hpp"

#include <string>

namespace stillwire {

// `code` is errno's value; `deed` completes "cannot …", e.g. "open", "write".
[[nodiscard]] Error fileError(const std::string& path, const std::string& deed, int code);

} // namespace stillwire
