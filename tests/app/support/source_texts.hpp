// SPDX-License-Identifier: GPL-3.0-or-later
// What people may come to read that no tr() marks: the literals of core, meters and the report, which have no Qt, and
// the names in the sheets, descriptions and scripts that come with Stillwire.
#pragma once

#include <filesystem>
#include <set>
#include <string>

namespace stillwire::test {

// Every literal of the C++ files below `source` that reads like a sentence; neighbours are joined, comments and
// includes left out. Which files are for machines only stands in source_texts.cpp.
[[nodiscard]] std::set<std::string> sentencesOfSource(const std::filesystem::path& source);

// Names of steps, sides and verdicts, and every name, caution and note below `source`/resources.
[[nodiscard]] std::set<std::string> namesOfResources(const std::filesystem::path& source);

// Both, as a file for lupdate to read: QT_TRANSLATE_NOOP("core", …) and QT_TRANSLATE_NOOP("names", …).
[[nodiscard]] std::string textsForLupdate(const std::filesystem::path& source);

} // namespace stillwire::test
