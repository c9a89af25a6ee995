// SPDX-License-Identifier: GPL-3.0-or-later
// What was taken of a foreign CSV, in sentences: whoever judges by its numbers can see how they were read.
#pragma once

#include "core/capture/reader.hpp"

#include <vector>

namespace stillwire {

[[nodiscard]] std::vector<Sentence> takenSays(const ImportTaken& taken);

} // namespace stillwire
