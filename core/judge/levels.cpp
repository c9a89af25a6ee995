// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/judge/levels.hpp"

#include "core/judge/agreement.hpp"
#include "core/judge/hangs.hpp"
#include "core/judge/lost_motion.hpp"
#include "core/judge/supply.hpp"
#include "core/stats/exact.hpp"
#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kLatest = 8;                              // stays: as many poses to one side as to the other
constexpr Time kLeft = std::chrono::milliseconds(1500); // before its place ended
constexpr double kStayShare = 0.1;                      // of the time its place lasted
constexpr double kUnmovedShare = 0.5;                   // the same, of a stay that was carried over its mark

bool isVisit(const Plateau& stay, const Timeline& timeline) {
    const Context& place = stay.place;
    if (place.wire != Wire::signal || place.position < 0 || place.poseIndex >= 0) return false;
    if (timeline.undone(place.stepVisit)) return false;
    return !place.step || !traits(*place.step).requiredWiggle();
}

Visit visitOf(const Plateau& stay, const Level& level) {
    Visit visit;
    visit.from = stay.from;
    visit.to = stay.to;
    visit.raw_V = stay.level_V;
    visit.level_V = level.level_V;
    visit.u_V = level.u_V;
    visit.readings = static_cast<int>(stay.readings);
    visit.step = stay.place.step;
    return visit;
}

// The first cold stay at a position. When the sensor is turned later, it moves along as the later stays before the
// turning moved: a cold finding is not cleared by turning, nor does it stay where the sensor no longer is.
class ColdVisit {
public:
    void see(const Plateau& stay) {
        const bool warm = stay.place.warm || (stay.place.step && traits(*stay.place.step).warmth == Warmth::late);
        if (!first_ && !warm) {
            first_ = Settled{stay.early_V, stay.noise_V,
                             static_cast<double>(std::min<std::int64_t>(stay.readings, kEarlyReadings))};
            turns_ = stay.place.turnCount;
        }
        // While adjusting it may have been turned before a turn was told.
        const bool unturned = stay.place.turnCount == turns_ && stay.place.step != Step::adjust;
        if (first_ && unturned) lastUnturned_V_ = stay.level_V;
        if (first_ && stay.place.turnCount > turns_) turned_ = true;
    }
    [[nodiscard]] std::optional<Settled> carriedTo(const std::vector<Settled>& now) const {
        if (!first_ || !turned_) return first_;
        std::vector<double> levels;
        for (const Settled& s : now) levels.push_back(s.level_V);
        Settled moved = *first_;
        moved.level_V += medianOf(levels) - lastUnturned_V_;
        return moved;
    }

private:
    static constexpr std::int64_t kEarlyReadings = 10;
    std::optional<Settled> first_;
    int turns_ = 0;
    bool turned_ = false;
    double lastUnturned_V_ = 0;
};

void judgePosition(const Sheet& sheet, const MeterTraits& meter, const Supply& supply, PositionLevel& position,
                   const std::vector<Settled>& raw, const std::optional<Settled>& cold) {
    std::vector<double> levels, raws;
    double worst = 2;
    const auto weigh = [&](double level_V, double u_V) {
        worst = std::min(worst, probabilityInside(level_V, u_V, position.window_V.min_V, position.window_V.max_V));
    };
    for (const Visit& visit : position.visits) {
        if (visit.standsApart()) continue;
        levels.push_back(visit.level_V);
        raws.push_back(visit.raw_V);
        weigh(visit.level_V, visit.u_V);
    }
    if (levels.empty()) return;
    position.level_V = medianOf(levels);
    position.raw_V = medianOf(raws);
    Settled middle = raw.front();
    middle.level_V = *position.raw_V;
    for (const Settled& s : raw) middle.noise_V = std::max(middle.noise_V, s.noise_V);
    position.u_V = ratiometricLevel(sheet, meter, supply, middle).u_V;
    position.spread_V =
        *std::max_element(levels.begin(), levels.end()) - *std::min_element(levels.begin(), levels.end());
    if (cold) {
        const Level level = ratiometricLevel(sheet, meter, supply, *cold);
        position.coldLevel_V = level.level_V;
        weigh(level.level_V, level.u_V);
    }
    position.probabilityInside = worst;
    position.conformance = conformanceOf(worst);
}

} // namespace

Conformance conformanceOf(double probability) {
    if (probability >= kSureInside) return Conformance::inside;
    return probability <= kSureOutside ? Conformance::outside : Conformance::undecided;
}

std::vector<Plateau> settledStays(const std::vector<Plateau>& plateaus, const Timeline& timeline) {
    std::vector<Plateau> stays;
    for (std::size_t begin = 0; begin < plateaus.size();) {
        const Context& place = plateaus[begin].place;
        const std::size_t after = timeline.indexAt(place.from) + 1;
        const bool goesOn = after >= timeline.count();
        const Time over = goesOn ? Time::max() : timeline.context(static_cast<int>(after)).from;
        std::size_t end = begin;
        const Plateau* best = nullptr;
        bool anyMoved = false;
        while (end < plateaus.size() && plateaus[end].place.from == place.from &&
               plateaus[end].place.stepVisit == place.stepVisit && plateaus[end].place.position == place.position)
            anyMoved = anyMoved || (plateaus[end].moved && plateaus[end].readings >= 2), ++end;
        for (std::size_t i = begin; i < end; ++i) {
            const Plateau& plateau = plateaus[i];
            if (plateau.readings < 2) continue;
            // Some readings alike on the way are no stay.
            const double readings = static_cast<double>(plateau.readings);
            const double stood_s = toSeconds(plateau.to - plateau.from) * readings / (readings - 1);
            if (!goesOn && stood_s < kStayShare * toSeconds(over - place.from)) continue;
            // The hand had not moved yet: it moved later, and settled or was too unsteady to.
            const bool left = !goesOn && over - plateau.to > kLeft;
            const bool brief = !goesOn && stood_s < kUnmovedShare * toSeconds(over - place.from);
            if (place.moveExpected && (anyMoved || left || brief) && !plateau.moved) continue;
            if (!best || plateau.readings >= best->readings) best = &plateau;
        }
        if (best) stays.push_back(*best);
        begin = end;
    }
    return stays;
}

Levels weighLevels(const LevelEvidence& evidence) {
    const Sheet& sheet = *evidence.sheet;
    const MeterTraits& meter = *evidence.meter;
    const std::vector<Plateau>& stays = *evidence.stays;
    Levels levels;
    levels.supply = weighSupply(evidence, stays, levels);
    for (const Position& position : sheet.positions) {
        PositionLevel level;
        level.name = position.name;
        level.window_V = position.window;
        levels.positions.push_back(std::move(level));
    }
    const std::size_t rest = static_cast<std::size_t>(&sheet.rest() - sheet.positions.data());
    const std::size_t count = sheet.positions.size();
    int turns = 0;
    for (const Plateau& stay : stays) turns = std::max(turns, stay.place.turnCount);
    levels.adjusted = turns > 0;

    std::vector<std::vector<Settled>> raw(count);
    std::vector<ColdVisit> cold(count);
    std::vector<bool> confirmed(count, false);
    std::vector<bool> returned; // of the visits to rest
    std::vector<Arrival> arrivals;
    double noise_V = 0;
    int previous = -1;
    std::vector<double> unpressed; // levels at rest before anything was pressed, wiggles too
    for (const Plateau& stay : stays) {
        if (previous < 0 || static_cast<std::size_t>(previous) == rest) {
            const bool atRest = stay.place.wire == Wire::signal && stay.place.position == static_cast<int>(rest);
            if (atRest && !evidence.timeline->undone(stay.place.stepVisit))
                unpressed.push_back(ratiometricLevel(sheet, meter, levels.supply, settledOf(stay)).level_V);
        }
        if (!isVisit(stay, *evidence.timeline)) continue;
        const auto index = static_cast<std::size_t>(stay.place.position);
        const int from = previous == stay.place.position ? -1 : previous;
        const bool cameBack = index == rest && previous >= 0 && static_cast<std::size_t>(previous) != rest;
        previous = stay.place.position;
        cold[index].see(stay);
        if (stay.place.turnCount < turns) continue; // after turning, what was before is history
        if (stay.place.step == Step::confirm && turns > 0 && !confirmed[index]) {
            // Tightening moves it: what was before is history, too.
            levels.positions[index].visits.clear();
            raw[index].clear();
            if (index == rest) returned.clear();
            std::erase_if(arrivals, [&](const Arrival& a) { return a.at == stay.place.position; });
        }
        if (stay.place.step == Step::confirm) confirmed[index] = true;
        const Settled seen = settledOf(stay);
        levels.positions[index].visits.push_back(visitOf(stay, ratiometricLevel(sheet, meter, levels.supply, seen)));
        raw[index].push_back(seen);
        arrivals.push_back({from, stay.place.position, levels.positions[index].visits.back().level_V});
        if (index != rest) continue;
        returned.push_back(cameBack);
        noise_V = std::max(noise_V, stay.noise_V);
        if (cameBack) ++levels.releases;
    }
    levels.confirmed = std::all_of(confirmed.begin(), confirmed.end(), [](bool b) { return b; });
    Releases releases{rest, returned, std::nullopt, evidence.timeline->armOnStop(), evidence.timeline->armAnswered()};
    if (unpressed.size() > kLatest) unpressed.erase(unpressed.begin(), unpressed.end() - kLatest);
    if (!unpressed.empty() && !levels.adjusted) releases.before_V = medianOf(unpressed);
    const double resolution_V = meter.rangeFor(sheet.rest().window.middle_V()).resolution_V;
    const double repeats_V = std::max({sheet.play_V, 6 * noise_V, 3 * resolution_V});
    levels.lostMotion = findLostMotion(sheet, arrivals, repeats_V);
    if (!levels.lostMotion || levels.lostMotion->position != sheet.rest().name)
        findHangs(sheet, repeats_V, releases, levels);
    for (std::size_t i = 0; i < count; ++i) tellApart(sheet, i, repeats_V, levels.positions[i]);
    for (std::size_t i = 0; i < count; ++i)
        if (!raw[i].empty())
            judgePosition(sheet, meter, levels.supply, levels.positions[i], raw[i], cold[i].carriedTo(raw[i]));
    return levels;
}

} // namespace stillwire
