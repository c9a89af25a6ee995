// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/result.hpp"

namespace stillwire {

std::string Error::text() const {
    std::string out = where;
    if (line > 0) out += ":" + std::to_string(line);
    if (!out.empty()) out += ": ";
    out += what;
    if (!mend.empty()) out += "; " + mend;
    return out;
}

} // namespace stillwire
