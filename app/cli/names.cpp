// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/names.hpp"

namespace stillwire {

const char* nameOf(BlindCause cause) {
    switch (cause) {
    case BlindCause::autorange: return "autorange";
    case BlindCause::gap: return "gap";
    case BlindCause::overload: return "overload";
    case BlindCause::hold: return "hold";
    case BlindCause::frozen: return "frozen";
    case BlindCause::unit: return "unit";
    }
    return "";
}

const char* nameOf(PhaseKind kind) {
    switch (kind) {
    case PhaseKind::quiet: return "quiet";
    case PhaseKind::wiggle: return "wiggle";
    case PhaseKind::travel: return "travel";
    case PhaseKind::blind: return "blind";
    }
    return "";
}

const char* nameOf(Direction direction) { return direction == Direction::down ? "down" : "up"; }

const char* nameOf(ExcursionKind kind) {
    switch (kind) {
    case ExcursionKind::dropout: return "dropout";
    case ExcursionKind::play: return "play";
    case ExcursionKind::aside: return "aside";
    }
    return "";
}

const char* nameOf(Likely likely) {
    switch (likely) {
    case Likely::slip: return "slip";
    case Likely::tap: return "tap";
    case Likely::early: return "early";
    case Likely::late: return "late";
    case Likely::unfinished: return "unfinished";
    case Likely::resting: return "resting";
    case Likely::creep: return "creep";
    case Likely::lean: return "lean";
    case Likely::lead: return "lead";
    case Likely::crank: return "crank";
    case Likely::sag: return "sag";
    case Likely::unknown: return "unknown";
    }
    return "";
}

const char* nameOf(Conformance conformance) {
    switch (conformance) {
    case Conformance::inside: return "inside";
    case Conformance::outside: return "outside";
    case Conformance::undecided: return "undecided";
    }
    return "";
}

} // namespace stillwire
