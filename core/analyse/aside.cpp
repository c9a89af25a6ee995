// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/aside.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

namespace stillwire {

namespace {
using namespace std::chrono_literals;
// Own rules, no source.
constexpr double kSameLevel_V = 0.03; // a position is met again to this, or to the sheet's play
constexpr double kSameCounts = 3;
constexpr double kBeyond = 1.1;     // of the way to another position: a firm push
constexpr int kThere = 2;           // readings at another position's level: one may be a dropout in part
constexpr int kMostTaps = 3;        // in all wiggles
constexpr double kPushShare = 0.3;  // of its pose's readings
constexpr double kFlatShare = 0.25; // of a lean's depth, from its lowest to its highest reading
constexpr double kAlike_V = 0.02;   // of one arm pushed over the same way
constexpr double kAlikeShare = 0.2; // or of the lean
constexpr double kMostAlike = 0.22; // of the pushes to one side
constexpr Time kLoneEvent = 500ms;  // longer than a track loses contact
constexpr int kLoneReadings = 3;
constexpr double kRail_V = 0.1;
constexpr double kCrankLeast = 0.5, kCrankMost = 0.95; // of its level, what a cranked engine leaves of the reference
constexpr Time kCrank = 2500ms;                        // a try of the starter, at most
constexpr Time kEarly = 3s, kLate = 2500ms;

// Where the positions were seen to lie, shown volts; their windows where they were not.
class Travel {
public:
    Travel(const AsideEvidence& evidence) : evidence_(&evidence) {
        const Sheet& sheet = *evidence.sheet;
        std::vector<std::vector<double>> seen(sheet.positions.size());
        for (const Plateau& plateau : *evidence.plateaus) {
            const Context& at = plateau.place;
            if (at.position < 0 || at.poseIndex >= 0 || at.wire != Wire::signal || plateau.readings < 3) continue;
            seen[static_cast<std::size_t>(at.position)].push_back(plateau.level_V);
        }
        for (std::size_t i = 0; i < seen.size(); ++i) {
            if (seen[i].empty())
                levels_.push_back(sheet.positions[i].window.middle_V());
            else
                levels_.push_back(medianOf(seen[i]));
            measured_.push_back(!seen[i].empty());
        }
    }
    [[nodiscard]] double near_V() const {
        return std::max({kSameLevel_V, evidence_->sheet->play_V, kSameCounts * evidence_->resolution_V});
    }
    // The position that these volts are those of.
    [[nodiscard]] std::optional<std::size_t> at(double volts_V) const {
        for (std::size_t i = 0; i < levels_.size(); ++i)
            if (measured_[i] && std::abs(volts_V - levels_[i]) <= near_V()) return i;
        return std::nullopt;
    }
    // From one level towards another position's, and not much beyond the last.
    [[nodiscard]] bool along(double from_V, double to_V) const {
        return std::any_of(levels_.begin(), levels_.end(), [&](double level_V) {
            const double way_V = level_V - from_V;
            return (to_V - from_V) * way_V > 0 && std::abs(to_V - from_V) <= kBeyond * std::abs(way_V) + near_V();
        });
    }
    [[nodiscard]] bool rests(double volts_V) const {
        const auto index = static_cast<std::size_t>(&evidence_->sheet->rest() - evidence_->sheet->positions.data());
        return std::abs(volts_V - levels_[index]) <= 2 * near_V();
    }

private:
    const AsideEvidence* evidence_;
    std::vector<double> levels_;
    std::vector<bool> measured_;
};

bool atRail(double volts_V, const Sheet& sheet) { return volts_V <= kRail_V || volts_V >= sheet.nominal_V - kRail_V; }

void setAside(Excursion& e, Likely likely) {
    e.kind = ExcursionKind::aside;
    e.likely = likely;
}

bool ofSignal(const Excursion& e, const AsideEvidence& evidence) {
    return e.kind == ExcursionKind::dropout && !e.open && e.step &&
           evidence.timeline->at(e.from - evidence.aperture).wire == Wire::signal;
}

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

// Flat and little, and as long as the push, in a pose of the shaft.
bool mayLean(const Excursion& e, const AsideEvidence& evidence) {
    if (!ofSignal(e, evidence) || e.poseIndex < 0) return false;
    const Pose& pose = evidence.timeline->poses()[static_cast<std::size_t>(e.poseIndex)];
    const double depth_V = std::abs(e.far_V - e.held_V);
    return pose.shaken != Wiggled::harness && e.depth_V() <= evidence.sheet->leanMax_V &&
           !atRail(e.extreme_V, *evidence.sheet) && e.readings >= 2 && e.readings >= kPushShare * pose.readings &&
           e.farSpread_V <= std::max(kFlatShare * depth_V, 2 * e.threshold_V / 3);
}

// The same push does the same: shifts to one side, as deep, again and again where a step pushes so. A track fails in
// fewer of them, and seldom as deep again.
void tellLeans(std::vector<Excursion>& excursions, const AsideEvidence& evidence) {
    const std::vector<Pose>& poses = evidence.timeline->poses();
    const auto poseOf = [&](const Excursion& e) -> const Pose& {
        return poses[static_cast<std::size_t>(e.poseIndex)];
    };
    const auto samePush = [](const Pose& a, const Pose& b) {
        return a.stepVisit == b.stepVisit && a.armHeld == b.armHeld && a.where.way == b.where.way &&
               a.shaken != Wiggled::harness && b.shaken != Wiggled::harness;
    };
    std::vector<Excursion*> shifts, leans;
    for (Excursion& e : excursions)
        if (mayLean(e, evidence)) shifts.push_back(&e);
    for (Excursion* e : shifts) {
        const double depth_V = std::abs(e->far_V - e->held_V);
        const double alike_V = std::max({kAlike_V, kAlikeShare * depth_V, 2 * evidence.resolution_V});
        std::set<int> alike;
        for (const Excursion* other : shifts) {
            const bool same = std::abs(std::abs(other->far_V - other->held_V) - depth_V) <= alike_V;
            if (same && other->direction == e->direction && samePush(poseOf(*other), poseOf(*e)))
                alike.insert(other->poseIndex);
        }
        const auto pushes =
            std::count_if(poses.begin(), poses.end(), [&](const Pose& p) { return samePush(p, poseOf(*e)); });
        if (alike.size() >= 2 && static_cast<double>(alike.size()) >= kMostAlike * static_cast<double>(pushes))
            leans.push_back(e);
    }
    for (Excursion* e : leans) setAside(*e, Likely::lean);
}

// What was seen once in all, for longer than a track loses contact: at 0 V the tip of the lead, at a share of its
// level the supply under the starter. A lead check asks about the tip, so there it is an answer.
std::optional<Likely> asLone(const Excursion& e, const AsideEvidence& evidence) {
    const bool brief = e.to - e.from < kLoneEvent;
    if (e.step == Step::leadCheck || brief || e.direction == Direction::up || e.held_V <= 2 * kRail_V) return {};
    // Over more than one pose it may be more than one event.
    const std::vector<Pose>& poses = evidence.timeline->poses();
    const auto within = std::count_if(poses.begin(), poses.end(),
                                      [&](const Pose& pose) { return pose.from > e.from && pose.from <= e.to; });
    if (e.far_V <= kRail_V && e.readings >= kLoneReadings && within == 0) return Likely::lead;
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

// A lead that left early stays away until its step is over.
Time overAt(const Excursion& e, const AsideEvidence& evidence) {
    if (e.likely != Likely::lead || !e.step) return e.to;
    const int visit = evidence.timeline->at(e.from - evidence.aperture).stepVisit;
    return visit < 0 || heldAfter(e.to, visit, evidence)
               ? e.to
               : std::max(e.to, evidence.timeline->stepVisits()[static_cast<std::size_t>(visit)].to);
}

// The arm stood where it was before for some time after it was asked to move.
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

// A reference that sinks, and is none the less live: what feeds it does.
std::optional<Likely> asSag(const LevelJump& jump, const AsideEvidence& evidence) {
    const bool sinks = !jump.leapt && jump.to_V < jump.from_V && !atRail(jump.to_V, *evidence.sheet);
    return sinks ? std::optional(Likely::sag) : std::nullopt;
}

} // namespace

std::vector<Aside> tellAside(std::vector<Excursion>& excursions, std::vector<LevelJump>& jumps,
                             const AsideEvidence& evidence) {
    const Travel travel(evidence);
    tellMovements(excursions, travel, evidence);
    tellLeans(excursions, evidence);
    for (Excursion& e : excursions)
        if (leftEarly(e, evidence)) setAside(e, Likely::lead);
    tellLone(excursions, evidence);
    std::vector<Aside> asides = lateStarts(evidence, travel);
    for (const Excursion& e : excursions)
        if (e.kind == ExcursionKind::aside)
            asides.push_back({e.from, overAt(e, evidence), e.held_V, e.extreme_V, e.step, e.likely});
    std::erase_if(jumps, [&](const LevelJump& jump) {
        const Wire wire = evidence.timeline->at(jump.at - evidence.aperture).wire;
        std::optional<Likely> likely;
        if (wire == Wire::signal) likely = asMovement(jump, travel, evidence);
        if (wire == Wire::reference) likely = asSag(jump, evidence);
        if (likely) asides.push_back({jump.at, jump.at, jump.from_V, jump.to_V, jump.step, *likely});
        return likely.has_value();
    });
    return asides;
}

void addVisitsApart(const std::vector<PositionLevel>& positions, std::vector<Aside>& asides) {
    for (const PositionLevel& position : positions)
        for (const Visit& visit : position.visits)
            if (visit.aside)
                asides.push_back({visit.from, visit.to, position.raw_V.value_or(visit.raw_V), visit.raw_V, visit.step,
                                  *visit.aside});
    std::sort(asides.begin(), asides.end(), [](const Aside& a, const Aside& b) { return a.from < b.from; });
}

} // namespace stillwire
