// SPDX-License-Identifier: GPL-3.0-or-later
// Every figure of the findings, to the last digit, as text: equal texts are equal findings.
#pragma once

#include "core/findings/findings.hpp"

#include <string>

namespace stillwire::test {

[[nodiscard]] std::string findingsText(const Findings& findings);

} // namespace stillwire::test
