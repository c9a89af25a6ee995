// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/findings/findings.hpp"

namespace stillwire {

const char* decisionName(Decision decision) {
    switch (decision) {
    case Decision::keep: return "keep";
    case Decision::adjust: return "adjust";
    case Decision::replace: return "replace";
    case Decision::checkWiring: return "check-wiring";
    case Decision::checkSupply: return "check-supply";
    case Decision::checkLinkage: return "check-linkage";
    case Decision::cannotTell: break;
    }
    return "cannot-tell";
}

} // namespace stillwire
