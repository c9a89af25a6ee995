// SPDX-License-Identifier: GPL-3.0-or-later
// Where the sources lie, for tests that read what ships with them.
#pragma once

#include <string>

namespace stillwire::test {

[[nodiscard]] std::string sourceFile(const std::string& path); // from the root

} // namespace stillwire::test
