// SPDX-License-Identifier: GPL-3.0-or-later
// What an explanation may go on as, and what that costs. The states and their ways stand in hypothesis.hpp, the
// figures in tuning.hpp. A reading costs by how well it was foreseen: next to nothing at a held level, a little on a
// line or where the one before was, and the same for all where nobody could have foreseen it.
#include "core/explain/search.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

void Search::extend(const Hypothesis& from, const Sample& sample) {
    switch (from.doing) {
    case Doing::held: return extendHeld(from, sample);
    case Doing::away: return extendAway(from, sample);
    case Doing::moving: return extendMoving(from, sample);
    case Doing::offLine: return extendOffLine(from, sample);
    }
}

void Search::keep(Hypothesis to, double cost, bool opens, bool unasked) {
    to.cost += cost;
    next_.push_back({std::move(to), opens, unasked});
}

// Whether a mark has asked for a movement that has not come yet.
bool Search::awaited(const Hypothesis& from, const Sample& sample) const {
    if (from.answered >= requests_) return false;
    return sample.time <= asked_ + fromSeconds(tuning_.moving.patience_s) || !from.level.known(tuning_);
}

// What it costs to move now; remembers what was paid because nobody asked.
double Search::moveCost(Hypothesis& to, const Sample& sample) const {
    const Expectation& e = *sample.expected;
    const Tuning::Moving& moving = tuning_.moving;
    if (!e.judged) return 0;
    const bool corrects = e.asked && sample.time <= e.from + fromSeconds(e.grace_s);
    if (awaited(to, sample) || corrects) {
        to.answered = requests_;
        to.surcharge = 0;
        return moving.asked;
    }
    to.surcharge = e.holds ? e.beginMove - moving.asked : 0;
    to.movedFrom = sample.time;
    return e.beginMove;
}

// A level begins with this reading.
void Search::settleAt(Hypothesis to, const Sample& sample, double cost, bool unasked) {
    const Expectation& e = *sample.expected;
    const bool whereAsked = !e.sweep && to.surcharge + e.beginMove <= tuning_.moving.asked;
    const bool rail = e.rails && e.judged && to.level.id() >= 0 && !whereAsked && atRail(sample.volts_V) &&
                      !atRail(to.level.level_V());
    const bool returns = to.level.id() >= 0 && std::abs(sample.volts_V - to.level.level_V()) <= to.level.reach_V();
    const double returned = returns ? std::max(0.0, std::log(tuning_.moving.returns / (2 * to.level.reach_V()))) : 0;
    if (returns)
        to.level.add(tuning_, sample.time, sample.volts_V, e.stirred);
    else
        to.level = LevelEstimate(tuning_, meterAt(sample.volts_V), levels_++, sample.time, sample.volts_V,
                                 e.held ? tuning_.hand.held_V : 0);
    to.doing = Doing::held;
    keep(std::move(to), cost + (rail ? tuning_.moving.atRail : 0) + returned, true, unasked);
}

void Search::beginMove(Hypothesis to, const Sample& sample) {
    const double cost = moveCost(to, sample);
    to.doing = Doing::moving;
    to.from = sample.time;
    to.line = Trend(sample.time, sample.volts_V);
    const bool unasked = to.surcharge > 0;
    keep(std::move(to), cost + tuning_.unforeseen + tuning_.moving.perSecond * sample.dt_s, true, unasked);
}

// What the distance of a reading within reach may cost: a lean surprises once, and where somebody shakes it not even
// so.
double Search::mostAtLevel(const LevelEstimate& level, const Sample& sample) const {
    if (sample.expected->stirred) return tuning_.held.lean;
    const bool again = touches_ && std::abs(sample.volts_V - last_V_) <= level.quietReach_V();
    return again ? tuning_.foreseen : tuning_.held.surprise;
}

void Search::extendHeld(const Hypothesis& from, const Sample& sample) {
    const double offset_V = sample.volts_V - from.level.level_V();
    const double off_V = std::abs(offset_V);
    const Expectation& e = *sample.expected;
    if (off_V <= from.level.reach_V()) {
        Hypothesis to = from;
        const double cost = from.level.costOf(tuning_, sample.volts_V, mostAtLevel(from.level, sample), e.held);
        // A shift under side load is no news of the level.
        if (!e.stirred || off_V <= from.level.quietReach_V())
            to.level.add(tuning_, sample.time, sample.volts_V, e.stirred);
        keep(std::move(to), cost, false);
        if (off_V <= from.level.quietReach_V() || !from.level.known(tuning_)) return;
    } else {
        {
            Hypothesis to = from;
            to.doing = Doing::away;
            to.from = sample.time;
            to.flat.begin(sample.time, sample.volts_V);
            to.flat_s = e.flat_s;
            to.flatReadings = e.flatReadings;
            const double age = toSeconds(sample.time - from.level.began()) / tuning_.away.young_s;
            const double young = tuning_.away.young * std::max(1.0 / from.level.count(), 1 - age);
            const double late = awaited(from, sample) ? tuning_.moving.awaited : 0;
            keep(std::move(to),
                 tuning_.away.begins + young + late + tuning_.unforeseen + tuning_.away.perSecond * sample.dt_s,
                 true);
        }
        Hypothesis to = from;
        const double cost = moveCost(to, sample);
        const bool unasked = to.surcharge > 0;
        settleAt(std::move(to), sample, cost + tuning_.unforeseen + tuning_.moving.settles, unasked);
    }
    beginMove(from, sample);
    const Tuning::Hand& hand = tuning_.hand;
    const double trembles_V = std::clamp(hand.share * off_V, hand.least_V, hand.most_V);
    if (e.stirred || from.level.noise_V() >= trembles_V) return;
    Hypothesis to = from;
    to.level.trembles(tuning_, trembles_V);
    if (off_V > to.level.reach_V()) return;
    const bool arrives = sample.time - from.level.began() < fromSeconds(tuning_.away.young_s);
    const bool creeps =
        touches_ && std::abs(sample.volts_V - last_V_) <= 0.5 * from.level.reach_V(); // a dropout leaps
    const double begins = arrives                          ? hand.begins
                          : creeps                         ? hand.creeps
                          : meterAt(sample.volts_V).learnt ? hand.later
                                                           : hand.unknown;
    const double cost = begins + to.level.costOf(tuning_, sample.volts_V, tuning_.held.surprise, e.held);
    to.level.add(tuning_, sample.time, sample.volts_V, e.stirred);
    keep(std::move(to), cost, false);
}

// A reading that lies where the ones before it did, as one at a level.
double Search::flatCost(const Flat& flat, const Sample& sample) const {
    const MeterAt meter = meterAt(sample.volts_V);
    const double scatter_V =
        std::max(leastScatter_V(tuning_, meter), meter.expected_V) * std::sqrt(1 + 1.0 / flat.readings);
    const double z = (sample.volts_V - flat.level_V()) / scatter_V;
    return std::min(0.5 * z * z, tuning_.held.surprise);
}

void Search::extendAway(const Hypothesis& from, const Sample& sample) {
    const LevelEstimate& level = from.level;
    const double off_V = std::abs(sample.volts_V - level.level_V());
    const Expectation& e = *sample.expected;
    if (off_V <= tuning_.reach.back * level.reach_V()) {
        Hypothesis to = from;
        to.doing = Doing::held;
        const double cost = level.costOf(tuning_, sample.volts_V, mostAtLevel(level, sample), e.held);
        if (off_V <= level.quietReach_V()) to.level.add(tuning_, sample.time, sample.volts_V, e.stirred);
        keep(std::move(to), cost, true);
        const bool sameSide = (sample.volts_V - level.level_V()) * (from.flat.level_V() - level.level_V()) > 0;
        // Else it may be on its way back; or lean, where somebody shakes it.
        if (off_V <= level.quietReach_V() || !sameSide || e.stirred) return;
    }
    const double before_V = from.flat.level_V();
    // The first reading of a dropout may hold a part of it only: where the next lies a little further, it is flat
    // from there.
    const double atFlat = tuning_.away.flat + flatCost(from.flat, sample);
    const bool flat = touches_ && std::abs(sample.volts_V - before_V) <= level.reach_V() &&
                      (from.flat.readings > 2 || atFlat <= tuning_.unforeseen);
    const double wasOff_V = std::abs(before_V - level.level_V());
    const bool comesBack = (sample.volts_V - level.level_V()) * (before_V - level.level_V()) > 0 &&
                           off_V < (1 - tuning_.away.comesBack) * wasOff_V;
    const bool late = awaited(from, sample);
    Hypothesis to = from;
    if (flat)
        to.flat.add(sample.volts_V);
    else
        to.flat.begin(sample.time, sample.volts_V);
    const bool rail = e.rails && atRail(to.flat.level_V());
    const bool elsewhere = !rail && to.flat.readings >= std::max(2, from.flatReadings) &&
                           toSeconds(sample.time - to.flat.from) + aperture_s_ >
                               tuning_.away.flatSlack * from.flat_s; // so long at least
    double cost = (rail ? tuning_.away.perSecondRail : tuning_.away.perSecond) * sample.dt_s;
    if (!flat && !comesBack && late) cost += tuning_.moving.awaited;
    cost += flat ? atFlat : comesBack ? tuning_.foreseen : tuning_.unforeseen;
    // That it is no pause on the way somewhere else.
    const bool likely = late || e.sweep || (e.rails && atRail(before_V));
    const double goesOn = likely ? tuning_.away.dropoutGoesOn : tuning_.away.settlesElsewhere;
    if (flat) { // it may be there for good
        Hypothesis settled = from;
        const double moves = moveCost(settled, sample);
        const bool unasked = settled.surcharge > 0;
        settleAt(std::move(settled), sample, moves + goesOn + tuning_.moving.settles + atFlat, unasked);
    }
    if (!elsewhere) keep(std::move(to), cost, !touches_); // what was not seen is part of none
    if (!flat) {
        Hypothesis moves = from;
        moves.cost += goesOn;
        beginMove(std::move(moves), sample);
    }
}

// A reading on the line, as one at a level: by how far off it is, and how uneven the line.
double Search::onLineCost(const Trend& line, const Sample& sample) const {
    const MeterAt meter = meterAt(sample.volts_V);
    const double least_V = std::max(tuning_.reach.least_V / tuning_.reach.noises, meter.expected_V);
    const double spread_V = std::max(least_V, line.spread_V(sample.time));
    const double z = (sample.volts_V - line.at(sample.time)) / spread_V;
    const double cost = tuning_.line.onLine + 0.5 * z * z + tuning_.held.noisy * std::log(spread_V / least_V);
    return std::min(cost, tuning_.unforeseen);
}

void Search::extendMoving(const Hypothesis& from, const Sample& sample) {
    const MeterAt meter = meterAt(sample.volts_V);
    const double reach_V = meterReach_V(tuning_, meter);
    const Trend& line = from.line;
    const double step_V = sample.volts_V - line.newest_V();
    const bool known = line.readings() >= 2;
    const double lineReach_V = known ? line.reach_V(tuning_, meter, sample.time) : 0;
    const double off_V = known ? std::abs(sample.volts_V - line.at(sample.time)) : 0;
    const bool foreseen = known && off_V <= lineReach_V;
    const bool turns = known && std::abs(step_V) > reach_V && step_V * line.slope_V_per_s() < 0;
    const double reading =
        foreseen ? onLineCost(line, sample) : tuning_.unforeseen + (turns ? tuning_.moving.turns : 0);
    const bool still = std::abs(step_V) <= reach_V;
    // A movement that is where it began has not begun.
    const bool there =
        from.level.id() >= 0 && std::abs(sample.volts_V - from.level.level_V()) <= from.level.quietReach_V();

    Hypothesis to = from;
    to.line.add(tuning_, meter, sample.time, sample.volts_V);
    const double perSecond = to.line.paused() ? tuning_.moving.pausedPerSecond : tuning_.moving.perSecond;
    const double goesOn = there ? tuning_.unforeseen : still ? tuning_.foreseen : reading;
    keep(std::move(to), goesOn + perSecond * sample.dt_s, false);

    const double settles = tuning_.moving.settles + (still ? tuning_.foreseen : reading);
    settleAt(from, sample, settles, from.surcharge > 0);

    // Off the line?
    const bool moves = !line.paused() && std::abs(line.slope_V_per_s()) > tuning_.moving.paused * reach_V;
    if (line.readings() < tuning_.line.even || !moves || foreseen) return;
    Hypothesis leaves = from;
    leaves.doing = Doing::offLine;
    leaves.from = sample.time;
    leaves.flat.begin(sample.time, sample.volts_V);
    keep(std::move(leaves), tuning_.line.begins + tuning_.unforeseen + tuning_.away.perSecond * sample.dt_s, true);
}

void Search::extendOffLine(const Hypothesis& from, const Sample& sample) {
    const MeterAt meter = meterAt(sample.volts_V);
    const double reach_V = meterReach_V(tuning_, meter);
    const Trend& line = from.line;
    const double due_V = line.at(sample.time);
    const double farthest_V = line.newest_V() + tuning_.line.faster * (due_V - line.newest_V());
    const double lineReach_V = line.reach_V(tuning_, meter, sample.time);
    const auto between = [&](double a_V, double b_V) {
        return sample.volts_V >= std::min(a_V, b_V) - lineReach_V &&
               sample.volts_V <= std::max(a_V, b_V) + lineReach_V;
    };
    const bool onLine = between(due_V, farthest_V);
    if (onLine || between(line.newest_V(), due_V)) { // or the hand has been slower, or has come to rest
        Hypothesis to = from;
        to.doing = Doing::moving;
        const double cost = onLine ? onLineCost(line, sample) : tuning_.unforeseen;
        to.line.add(tuning_, meter, sample.time, sample.volts_V);
        keep(std::move(to), cost, true);
        if (onLine) return;
    }
    if (sample.time - from.from > fromSeconds(tuning_.line.longest_s)) return;
    Hypothesis to = from;
    const bool flat = std::abs(sample.volts_V - from.flat.level_V()) <= reach_V;
    const double step_V = line.slope_V_per_s() * toSeconds(sample.time - last_);
    const bool along = std::abs(sample.volts_V - last_V_ - step_V) <= reach_V; // the line, at its distance
    // Where it was, or on its way there, it has come to rest.
    const double left_V = line.newest_V() + line.slope_V_per_s() * line.interval_s();
    const bool rests = between(line.newest_V(), left_V);
    const double reading =
        std::min(flat && !rests ? tuning_.away.flat + flatCost(from.flat, sample) : tuning_.unforeseen,
                 along || flat ? tuning_.foreseen : tuning_.unforeseen);
    if (flat)
        to.flat.add(sample.volts_V);
    else
        to.flat.begin(sample.time, sample.volts_V);
    const Expectation& e = *sample.expected;
    const bool rail = e.rails && atRail(sample.volts_V);
    if (!rail && sample.time - to.flat.from > fromSeconds(std::max(e.flat_s, tuning_.away.flat_s))) return;
    keep(std::move(to), (rail ? tuning_.away.perSecondRail : tuning_.away.perSecond) * sample.dt_s + reading, false);
}

} // namespace stillwire
