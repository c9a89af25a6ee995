// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/shared/resources.hpp"

#include <iomanip>
#include <iostream>

namespace stillwire {

namespace {

// A description that does not read is listed with what is wrong with it: the others still help.
template <class Load> Status list(const std::string& kind, Load load) {
    const auto named = listNamed(kind);
    if (named.empty()) {
        Error e;
        e.where = kind;
        e.what = "none were found";
        e.mend = "set STILLWIRE_RESOURCES to the resources folder";
        return e;
    }
    for (const Named& n : named) {
        const auto loaded = load(n.path);
        std::cout << std::left << std::setw(28) << n.name
                  << (loaded ? loaded.value().name : "unreadable: " + loaded.error().text()) << "\n";
    }
    return Done{};
}

} // namespace

Status runSheets() { return list("sheets", loadSheet); }
Status runMeters() { return list("meters", loadMeter); }

} // namespace stillwire
