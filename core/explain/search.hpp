// SPDX-License-Identifier: GPL-3.0-or-later
// The few best explanations of one wire, reading by reading: each is carried on in every way it may go, those that
// come to the same are merged and the cheaper past kept (Viterbi 1967), the dearest are dropped, as in tracking with
// a bounded number of hypotheses (Reid 1979). Both from memory. What all that are left agree on is settled, and so,
// by the cheapest, is what is older than the lag; settled readings are handed on once and for good.
#pragma once

#include "core/domain/reading.hpp"
#include "core/explain/expectation.hpp"
#include "core/explain/past.hpp"
#include "core/sheet/meter_traits.hpp"
#include "core/sheet/sheet.hpp"

#include <vector>

namespace stillwire {

// Takes the settled readings, in order.
class SettledReadings {
public:
    virtual ~SettledReadings() = default;
    // Readings of one segment and one context; `begins`: the first is the segment's first.
    virtual void readings(const Reading* first, std::size_t count, int context, const Segment& segment,
                          bool begins) = 0;
};

class Search {
public:
    struct Setup {
        MeterTraits meter; // completed: interval and ranges are known
        double nominal_V = 5;
        std::vector<Window> windows; // of the sheet's positions, nominal
        Tuning tuning{};
    };
    explicit Search(Setup setup);

    // A number, in order of time; `context`: whatever the caller calls the marks in force.
    void push(const Reading& reading, int context, const Expectation& expected, SettledReadings& settled);
    void blind() { touches_ = false; }                    // readings before and after do not touch
    void moveAsked(const Expectation& expected);          // a mark asks for a movement
    void otherWire(Time asked, SettledReadings& settled); // the lead moves: whatever level comes next
    // What is not settled yet, as the cheapest explanation has it.
    void tellRest(SettledReadings& settled) const;

    // Nothing but one held level explains what came last: as many readings as this, near it, can be taken together,
    // up to the first that is not before `due`.
    struct Quiet {
        double level_V = 0, reach_V = -1;
        Time due{0};
        int most = 0;
    };
    [[nodiscard]] Quiet quiet(const Expectation& expected) const;
    void pushQuiet(const Reading* first, std::size_t count, int context, const Expectation& expected,
                   SettledReadings& settled);

    // The cheapest explanation of now; precondition: a reading was pushed.
    [[nodiscard]] const Hypothesis& now() const { return alive_.front().hypothesis; }
    [[nodiscard]] bool any() const { return !alive_.empty(); }
    [[nodiscard]] const Tuning& tuning() const { return tuning_; }
    [[nodiscard]] double expected_V(double volts_V) const; // noise of one reading there

private:
    struct Sample {
        Time time{0};
        double volts_V = 0;
        double dt_s = 0; // since the reading before, as far as costs go
        const Expectation* expected = nullptr;
    };
    struct Candidate {
        Hypothesis hypothesis;
        bool opens = false; // a segment of its own from here on
        bool unasked = false;
    };

    void extend(const Hypothesis& from, const Sample& sample);
    void extendHeld(const Hypothesis& from, const Sample& sample);
    void extendAway(const Hypothesis& from, const Sample& sample);
    void extendMoving(const Hypothesis& from, const Sample& sample);
    void extendOffLine(const Hypothesis& from, const Sample& sample);
    void settleAt(Hypothesis to, const Sample& sample, double cost, bool unasked);
    void beginMove(Hypothesis to, const Sample& sample);
    [[nodiscard]] bool awaited(const Hypothesis& from, const Sample& sample) const;
    [[nodiscard]] double moveCost(Hypothesis& to, const Sample& sample) const;
    [[nodiscard]] double mostAtLevel(const LevelEstimate& level, const Sample& sample) const;
    [[nodiscard]] double onLineCost(const Trend& line, const Sample& sample) const;
    [[nodiscard]] double flatCost(const Flat& flat, const Sample& sample) const;
    void keep(Hypothesis to, double cost, bool opens, bool unasked = false);
    [[nodiscard]] bool same(const Hypothesis& a, const Hypothesis& b) const;
    void choose(const Sample& sample);
    void describe(const Hypothesis& h); // its level, in its newest segment
    void learn(const Expectation& expected);
    [[nodiscard]] MeterAt meterAt(double volts_V) const;
    [[nodiscard]] bool atRail(double volts_V) const;
    void settle(SettledReadings& settled);
    void settleAll(SettledReadings& settled);
    bool settleCommon(SettledReadings& settled);
    void giveUpOthers();
    void emit(int segment, std::int64_t from, std::int64_t to, SettledReadings& settled) const;
    void forget();

    Tuning tuning_;
    MeterTraits meter_;
    double nominal_V_, aperture_s_;
    std::vector<Window> windows_;
    std::vector<double> expected_V_; // by range
    std::vector<int> learnt_;        // looks behind it
    double hand_V_ = 0;              // noise of a level that somebody holds
    int held_ = 0;                   // looks behind it

    std::vector<Candidate> alive_, next_; // the cheapest first
    Past past_;
    std::int64_t levels_ = 0, requests_ = 0;
    Time asked_{0}; // the newest request
    bool touches_ = false;
    Time last_{0}; // the newest reading
    double last_V_ = 0;

    // Readings that are not settled.
    std::vector<Reading> readings_;
    std::vector<int> contexts_;
    std::int64_t first_ = 0;   // number of readings_.front()
    std::int64_t settled_ = 0; // number of the first that is not settled
};

} // namespace stillwire
