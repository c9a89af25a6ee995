// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/phrases.hpp"

namespace stillwire {

Sentence likelySaid(Likely likely) {
    switch (likely) {
    case Likely::slip: return "most likely a slip";
    case Likely::tap: return "most likely a tap";
    case Likely::early: return "most likely moved before it was asked";
    case Likely::late: return "most likely moved late";
    case Likely::unfinished: return "most likely not pressed all the way";
    case Likely::resting: return "most likely a foot left on it";
    case Likely::creep: return "most likely the hand or foot crept";
    case Likely::lean: return "most likely the arm leaned with the push";
    case Likely::lead: return "most likely the tip lost contact";
    case Likely::crank: return "most likely the engine was cranked";
    case Likely::sag: return "most likely the battery sagged";
    case Likely::unknown: return "why is not known";
    }
    return {};
}

} // namespace stillwire
