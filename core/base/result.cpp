// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/result.hpp"

namespace stillwire {

Sentence Error::sentence() const {
    std::string at = where;
    if (line > 0) at += ":" + std::to_string(line);
    if (mend.empty()) return at.empty() ? what : Sentence{"%1: %2", {at, what}};
    return at.empty() ? Sentence{"%1; %2", {what, mend}} : Sentence{"%1: %2; %3", {at, what, mend}};
}

std::string Error::text() const { return sentence().english(); }

} // namespace stillwire
