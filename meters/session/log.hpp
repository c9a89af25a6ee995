// SPDX-License-Identifier: GPL-3.0-or-later
// The log: a file, never the terminal. Until openLog() nothing is written anywhere.
#pragma once

#include <string>

namespace stillwire {

void openLog(const std::string& path); // appends; a file that does not open leaves logging off
void logInfo(const std::string& text);
void logWarning(const std::string& text);

} // namespace stillwire
