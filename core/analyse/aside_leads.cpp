// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/aside_parts.hpp"

#include <algorithm>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
// Own rules, no source.
constexpr Time kLoneEvent = 500ms; // longer than a track loses contact
constexpr int kLoneReadings = 3;
constexpr double kCrankLeast = 0.5, kCrankMost = 0.95; // of its level, what a cranked engine leaves of the reference
constexpr Time kCrank = 2500ms;                        // a try of the starter, at most

// What was seen once in all, for longer than a track loses contact: at 0 V the tip of the lead; on the reference, at
// a share of its level, the supply under the starter. On the signal such a share may be the track's as well. A lead
// check asks about the tip, so there it is an answer.
std::optional<Likely> asLone(const Excursion& e, const AsideEvidence& evidence) {
    const bool brief = e.to - e.from < kLoneEvent;
    if (e.step == Step::leadCheck || brief || e.direction == Direction::up || e.held_V <= 2 * kAsideRail_V) return {};
    // Over more than one pose it may be more than one event.
    const std::vector<Pose>& poses = evidence.timeline->poses();
    const auto within = std::count_if(poses.begin(), poses.end(),
                                      [&](const Pose& pose) { return pose.from > e.from && pose.from <= e.to; });
    if (e.far_V <= kAsideRail_V && e.readings >= kLoneReadings && within == 0) return Likely::lead;
    const double left = e.extreme_V / e.held_V;
    const bool share = left >= kCrankLeast && left <= kCrankMost && e.to - e.from <= kCrank;
    const bool reference = evidence.timeline->at(e.from - evidence.aperture).wire == Wire::reference;
    return reference && share && within <= 1 ? std::optional(Likely::crank) : std::nullopt;
}

void tellLone(std::vector<Excursion>& excursions, const AsideEvidence& evidence) {
    Excursion* only = nullptr;
    for (Excursion& e : excursions) {
        if (e.kind != ExcursionKind::dropout || e.withReference || e.depth_V() <= e.play_V) continue;
        if (only) return; // of two, neither is
        only = &e;
    }
    if (!only || only->open || !only->step) return;
    if (const std::optional<Likely> likely = asLone(*only, evidence)) setAside(*only, *likely);
}

bool heldAfter(Time at, int stepVisit, const AsideEvidence& evidence) {
    return std::any_of(evidence.plateaus->begin(), evidence.plateaus->end(),
                       [&](const Plateau& stay) { return stay.place.stepVisit == stepVisit && stay.to > at; });
}

// Off its level until the lead was to go to another wire: it had gone.
bool leftEarly(const Excursion& e, const AsideEvidence& evidence) {
    const Context& at = evidence.timeline->at(e.from - evidence.aperture);
    const std::vector<StepVisit>& visits = evidence.timeline->stepVisits();
    const auto next = static_cast<std::size_t>(at.stepVisit) + 1;
    if (e.kind != ExcursionKind::dropout || at.stepVisit < 0 || next >= visits.size()) return false;
    if (traits(visits[next].step).wire == at.wire) return false;
    return !heldAfter(e.to, at.stepVisit, evidence);
}

} // namespace

void tellLeads(std::vector<Excursion>& excursions, const AsideEvidence& evidence) {
    for (Excursion& e : excursions)
        if (leftEarly(e, evidence)) setAside(e, Likely::lead);
    tellLone(excursions, evidence);
}

Time overAt(const Excursion& e, const AsideEvidence& evidence) {
    if (e.likely != Likely::lead || !e.step) return e.to;
    const int visit = evidence.timeline->at(e.from - evidence.aperture).stepVisit;
    return visit < 0 || heldAfter(e.to, visit, evidence)
               ? e.to
               : std::max(e.to, evidence.timeline->stepVisits()[static_cast<std::size_t>(visit)].to);
}

} // namespace stillwire
