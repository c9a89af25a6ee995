// SPDX-License-Identifier: GPL-3.0-or-later
// A sign of its own for each kind of verdict: done, turn it, out with it, look elsewhere first, not known.
#pragma once

#include "app/window/look/paint.hpp"
#include "core/findings/findings.hpp"

#include <utility>

namespace stillwire {

[[nodiscard]] inline std::pair<Shape, Role> signOf(Decision decision) {
    switch (decision) {
    case Decision::keep: return {Shape::tick, Role::good};
    case Decision::adjust: return {Shape::slope, Role::caution};
    case Decision::replace: return {Shape::cross, Role::fault};
    case Decision::cannotTell: return {Shape::dots, Role::quietText};
    default: break;
    }
    return {Shape::caution, Role::caution};
}

} // namespace stillwire
