// SPDX-License-Identifier: GPL-3.0-or-later
// Sentences of core and meters in the person's language, with their figures in them.
#pragma once

#include "core/base/sentence.hpp"

#include <string>

#include <QString>

namespace stillwire {

[[nodiscard]] QString say(const Sentence& sentence);

// A name out of a sheet, a meter description, a bench script or a mark. Those that come with Stillwire are known in
// every language; others stay as they are written.
[[nodiscard]] QString sayName(const std::string& name);

} // namespace stillwire
