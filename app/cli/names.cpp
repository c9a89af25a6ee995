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

const char* nameOf(ExcursionKind kind) { return kind == ExcursionKind::dropout ? "dropout" : "play"; }

const char* nameOf(Conformance conformance) {
    switch (conformance) {
    case Conformance::inside: return "inside";
    case Conformance::outside: return "outside";
    case Conformance::undecided: return "undecided";
    }
    return "";
}

} // namespace stillwire
