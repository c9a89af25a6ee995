// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/text.hpp"

#include <cstdarg>
#include <cstdio>

namespace stillwire::hands {

std::string text(const char* pattern, ...) {
    char buffer[512];
    std::va_list arguments;
    va_start(arguments, pattern);
    std::vsnprintf(buffer, sizeof buffer, pattern, arguments);
    va_end(arguments);
    return buffer;
}

} // namespace stillwire::hands
