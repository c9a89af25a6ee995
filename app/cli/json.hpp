// SPDX-License-Identifier: GPL-3.0-or-later
// Findings and truth as JSON text, members named and ordered as the command line promises.
#pragma once

#include "app/shared/evaluate.hpp"

#include <string>

namespace stillwire {

// One object, newline at its end. Members not measured are null.
[[nodiscard]] std::string findingsJson(const Evaluation& evaluation);

} // namespace stillwire
