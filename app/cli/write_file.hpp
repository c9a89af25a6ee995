// SPDX-License-Identifier: GPL-3.0-or-later
// A file that a command writes whole: a report, a truth. What is there already stays, unless the person says
// otherwise.
#pragma once

#include "core/base/result.hpp"

#include <string>

namespace stillwire {

// Before any work is done: error if `path` is there and `force` is not given, or if it is `input`, the capture that
// is read. Devices and pipes are no files to be lost.
[[nodiscard]] Status mayWrite(const std::string& path, bool force, const std::string& input = {});

// All of it or nothing: what was there before stays until the new text is on the disk.
[[nodiscard]] Status writeWhole(const std::string& path, const std::string& text, bool force);

} // namespace stillwire
