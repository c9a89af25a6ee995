// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/search.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

Search::Search(Setup setup)
    : tuning_(setup.tuning), meter_(std::move(setup.meter)), nominal_V_(setup.nominal_V),
      aperture_s_(meter_.longestAperture_s()), windows_(std::move(setup.windows)), expected_V_(meter_.ranges.size()),
      learnt_(meter_.ranges.size()) {
    for (std::size_t i = 0; i < meter_.ranges.size(); ++i)
        expected_V_[i] = tuning_.held.unknownCounts * meter_.ranges[i].resolution_V;
}

MeterAt Search::meterAt(double volts_V) const {
    const MeterRange& range = meter_.rangeFor(volts_V);
    const auto index = static_cast<std::size_t>(&range - meter_.ranges.data());
    return {range.resolution_V, expected_V_[index], learnt_[index] > 0, hand_V_};
}

double Search::expected_V(double volts_V) const { return meterAt(volts_V).expected_V; }

bool Search::atRail(double volts_V) const {
    const double share = tuning_.away.railShare * nominal_V_;
    if (volts_V > share && volts_V < nominal_V_ - share) return false;
    return std::none_of(windows_.begin(), windows_.end(), [&](const Window& w) { return w.contains(volts_V); });
}

void Search::push(const Reading& reading, int context, const Expectation& expected, SettledReadings& settled) {
    const double most_s = tuning_.search.freshGap * meter_.interval_s;
    Sample sample{reading.time, reading.volts_V, touches_ ? std::min(toSeconds(reading.time - last_), most_s) : 0,
                  &expected};
    readings_.push_back(reading);
    contexts_.push_back(context);
    next_.clear();
    if (alive_.empty()) {
        settleAt(Hypothesis{}, sample, 0, false);
    } else {
        for (const Candidate& c : alive_) extend(c.hypothesis, sample);
    }
    if (next_.empty()) settleAt(alive_.front().hypothesis, sample, 0, false); // nothing else it could be
    choose(sample);
    learn(expected);
    touches_ = true;
    last_ = reading.time;
    last_V_ = reading.volts_V;
    settle(settled);
}

// Keeps the cheapest of those that come to the same, and of the rest those that are not much dearer.
void Search::choose(const Sample& sample) {
    std::sort(next_.begin(), next_.end(),
              [](const Candidate& a, const Candidate& b) { return a.hypothesis.cost < b.hypothesis.cost; });
    const double least = next_.front().hypothesis.cost;
    std::vector<Candidate> chosen;
    double most = least + tuning_.search.margin;
    bool still = false;
    for (const Candidate& c : next_) {
        const Hypothesis& h = c.hypothesis;
        if (static_cast<int>(chosen.size()) >= tuning_.search.survivors || h.cost > most) break;
        if (std::any_of(chosen.begin(), chosen.end(), [&](const Candidate& k) { return same(k.hypothesis, h); }))
            continue;
        // What a held level could become next for less is no longer needed.
        if (!still && h.doing == Doing::held &&
            std::abs(sample.volts_V - h.level.level_V()) <= h.level.quietReach_V()) {
            still = true;
            most = std::min(most, h.cost + sample.expected->beginMove + tuning_.unforeseen + tuning_.moving.settles);
        }
        chosen.push_back(c);
    }
    const std::int64_t number = first_ + static_cast<std::int64_t>(readings_.size()) - 1;
    for (Candidate& c : chosen) {
        Hypothesis& h = c.hypothesis;
        if (c.opens) {
            Segment segment;
            segment.doing = h.doing;
            segment.from = number;
            segment.level = h.level.id();
            segment.unasked = c.unasked;
            segment.before = h.past;
            h.past = past_.add(segment);
        }
        past_.use(h.past);
        h.cost -= least;
        describe(h);
    }
    for (const Candidate& c : alive_) past_.drop(c.hypothesis.past);
    alive_.swap(chosen);
}

void Search::describe(const Hypothesis& h) {
    if (h.level.id() < 0) return;
    Segment& s = past_.at(h.past);
    s.level_V = h.level.level_V();
    s.noise_V = h.level.noise_V();
    s.threshold_V = h.level.threshold_V(tuning_);
}

bool Search::same(const Hypothesis& a, const Hypothesis& b) const {
    if (a.doing != b.doing) return false;
    const auto together = [&] {
        return std::abs(a.level.level_V() - b.level.level_V()) <=
               tuning_.search.alike * std::min(a.level.reach_V(), b.level.reach_V());
    };
    switch (a.doing) {
    case Doing::held:
        return together() &&
               std::max(a.level.noise_V(), b.level.noise_V()) < 2 * std::min(a.level.noise_V(), b.level.noise_V());
    case Doing::away: return together();
    case Doing::moving:
        return (a.line.slope_V_per_s() > 0) == (b.line.slope_V_per_s() > 0) && a.level.id() == b.level.id();
    case Doing::offLine: return true;
    }
    return true;
}

void Search::learn(const Expectation& expected) {
    const Hypothesis& h = now();
    if (h.doing != Doing::held || expected.stirred || !h.level.justLooked() || !h.level.known(tuning_)) return;
    const auto range = static_cast<std::size_t>(&meter_.rangeFor(h.level.level_V()) - meter_.ranges.data());
    double& known_V = expected_V_[range];
    const double noise_V = h.level.noise_V();
    if (expected.held || noise_V > tuning_.held.teaches * known_V) {
        held_ = std::min(held_ + 1, tuning_.held.looks);
        hand_V_ += (std::min(noise_V, tuning_.hand.most_V) - hand_V_) / held_;
        return;
    }
    const int looks = std::min(++learnt_[range], tuning_.held.looks);
    known_V = std::sqrt(known_V * known_V + (noise_V * noise_V - known_V * known_V) / looks);
}

void Search::moveAsked(const Expectation& expected) {
    for (Candidate& c : alive_)
        if (c.hypothesis.answered < requests_) c.hypothesis.cost += tuning_.moving.ignored;
    ++requests_;
    asked_ = expected.from;
    for (Candidate& c : alive_) {
        Hypothesis& h = c.hypothesis;
        const Time early = fromSeconds(tuning_.moving.early_s);
        if (h.surcharge <= 0 || h.movedFrom + early < expected.from || h.movedFrom < expected.stepFrom) continue;
        h.cost -= h.surcharge;
        h.surcharge = 0;
        h.answered = requests_;
        for (int i = h.past; i >= 0; i = past_.at(i).before) past_.at(i).unasked = false;
    }
    std::sort(alive_.begin(), alive_.end(),
              [](const Candidate& a, const Candidate& b) { return a.hypothesis.cost < b.hypothesis.cost; });
}

void Search::otherWire(Time asked, SettledReadings& settled) {
    settleAll(settled);
    for (const Candidate& c : alive_) past_.drop(c.hypothesis.past);
    alive_.clear();
    ++requests_;
    asked_ = asked;
    touches_ = false;
}

Search::Quiet Search::quiet(const Expectation& expected) const {
    if (alive_.size() != 1 || !touches_ || !expected.judged) return {};
    const LevelEstimate& level = now().level;
    if (now().doing != Doing::held || !level.known(tuning_)) return {};
    return {level.level_V(), level.quietReach_V(), level.due(), level.untilRefresh(tuning_)};
}

void Search::pushQuiet(const Reading* first, std::size_t count, int context, const Expectation& expected,
                       SettledReadings& settled) {
    Hypothesis& h = alive_.front().hypothesis;
    h.level.addQuiet(tuning_, first, count, expected.stirred);
    last_ = first[count - 1].time;
    last_V_ = first[count - 1].volts_V;
    settled.readings(first, count, context, past_.at(h.past), false); // with the level as it was: no grouping shows
    describe(h);
    learn(expected);
    first_ += static_cast<std::int64_t>(count);
    settled_ = first_;
}

} // namespace stillwire
