// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/source_folder.hpp"

namespace stillwire::test {

std::string sourceFile(const std::string& path) { return std::string(STILLWIRE_SOURCE_DIR) + "/" + path; }

} // namespace stillwire::test
