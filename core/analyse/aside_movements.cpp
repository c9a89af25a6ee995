// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/aside_parts.hpp"

#include <algorithm>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
// Own rules, no source.
constexpr int kThere = 2;    // readings at another position's level: one may be a dropout in part
constexpr int kMostTaps = 3; // in all wiggles
constexpr Time kEarly = 3s, kLate = 2500ms;

// Goes to another position's level, and comes back.
std::optional<Likely> asMovement(const Excursion& e, const Travel& travel, const AsideEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    if (*e.step == Step::sweep || atRail(e.extreme_V, sheet) || !travel.along(e.held_V, e.extreme_V)) return {};
    const std::optional<std::size_t> other = travel.at(e.far_V);
    // Back where it was asked to be, it was away before.
    const int asked = evidence.timeline->at(e.from - evidence.aperture).position;
    if (other && static_cast<int>(*other) == asked) return {};
    const bool there = other && travel.at(e.held_V) != other && e.farReadings >= kThere;
    if (!there) return {};
    return travel.rests(e.held_V) ? Likely::tap : Likely::slip;
}

} // namespace

bool ofSignal(const Excursion& e, const AsideEvidence& evidence) {
    return e.kind == ExcursionKind::dropout && !e.open && e.step &&
           evidence.timeline->at(e.from - evidence.aperture).wire == Wire::signal;
}

void tellMovements(std::vector<Excursion>& excursions, const Travel& travel, const AsideEvidence& evidence) {
    std::vector<Excursion*> pushed; // of wiggles
    for (Excursion& e : excursions) {
        const std::optional<Likely> likely = ofSignal(e, evidence) ? asMovement(e, travel, evidence) : std::nullopt;
        if (!likely) continue;
        setAside(e, *likely);
        if (e.poseIndex >= 0) pushed.push_back(&e);
    }
    // Nobody taps again and again while somebody pushes the shaft: a track may well end up at such a level.
    if (static_cast<int>(pushed.size()) <= kMostTaps) return;
    for (Excursion* e : pushed) {
        e->kind = ExcursionKind::dropout;
        e->likely = Likely::unknown;
    }
}

std::vector<Aside> lateStarts(const AsideEvidence& evidence, const Travel& travel) {
    std::vector<Aside> late;
    const std::vector<Plateau>& stays = *evidence.plateaus;
    for (std::size_t i = 0; i + 1 < stays.size(); ++i) {
        const Plateau &stood = stays[i], &next = stays[i + 1];
        const Context& at = stood.place;
        if (!at.moveExpected || at.position < 0 || at.wire != Wire::signal || next.place.from != at.from) continue;
        const std::optional<std::size_t> place = travel.at(stood.level_V), then = travel.at(next.level_V);
        const auto asked = static_cast<std::size_t>(at.position);
        if (!place || *place == asked || then != asked || stood.to - at.from < kLate) continue;
        late.push_back({at.from, stood.to, stood.level_V, next.level_V, at.step, Likely::late});
    }
    return late;
}

std::optional<Likely> asMovement(const LevelJump& jump, const Travel& travel, const AsideEvidence& evidence) {
    if (!jump.step || atRail(jump.to_V, *evidence.sheet) || !travel.along(jump.from_V, jump.to_V)) return {};
    const std::optional<std::size_t> other = travel.at(jump.to_V);
    const bool there = other && travel.at(jump.from_V) != other;
    if (!there && jump.leapt) return {};
    const Timeline& timeline = *evidence.timeline;
    for (std::size_t i = 0; i < timeline.count(); ++i) {
        const Context& at = timeline.context(static_cast<int>(i));
        if (at.from >= jump.at && at.from <= jump.at + kEarly && at.moveExpected) return Likely::early;
    }
    if (!there) return Likely::creep;
    return travel.rests(jump.from_V) ? Likely::tap : Likely::slip;
}

std::optional<Likely> asSag(const LevelJump& jump, const AsideEvidence& evidence) {
    const bool sinks = !jump.leapt && jump.to_V < jump.from_V && !atRail(jump.to_V, *evidence.sheet);
    return sinks ? std::optional(Likely::sag) : std::nullopt;
}

} // namespace stillwire
