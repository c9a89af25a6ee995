// SPDX-License-Identifier: GPL-3.0-or-later
// Follows the level of one wire: held, away from it, or moving to another. Streaming, one reading at a time.
#pragma once

#include "core/analyse/dip_detector.hpp"
#include "core/analyse/held_level.hpp"
#include "core/analyse/place_book.hpp"
#include "core/analyse/slow_departure.hpp"
#include "core/findings/findings.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace stillwire {

// What a reading turned out to be. `began…` are reported once, by the reading that shows it.
enum class ReadingClass { held, away, moving };

// What the tracker tells whoever keeps the books. Times are those of readings.
class TrackerListener {
public:
    virtual ~TrackerListener() = default;
    virtual void excursionFlagged(Time at, Direction direction) = 0;
    // Came back (or was still away when the capture ended). `shoulder`: a neighbour outside the excursion leant the
    // same way, so that it looks like a shifted level rather than a dip.
    virtual void excursionEnded(const Excursion& excursion, bool shoulder) = 0;
    virtual void excursionWithdrawn() = 0; // it was the beginning of a movement, or of a jump
    virtual void jumped(const LevelJump& jump) = 0;
    virtual void travelled(Time from, Time to) = 0; // from the last held reading to the first settled one
    virtual void travelWithdrawn(Time from) = 0;    // all since `from` was an excursion
    // `count` readings at the level, with no mark between; settledAnew: the first is that of a new level.
    virtual void held(const Reading* first, std::size_t count, bool settledAnew) = 0;
};

class LevelTracker {
public:
    // Windows are the sheet's, nominal volts: near enough to tell a press from a fault where nothing is marked.
    LevelTracker(double resolution_V, double play_V, std::vector<Window> windows, TrackerListener& listener);

    ReadingClass push(Time time, double volts_V, Asked asked);
    // As push() of each, for readings that would only be held and from which nothing is learned yet. How many may
    // be; how many of these are; and those.
    [[nodiscard]] std::size_t mostQuiet() const;
    [[nodiscard]] std::size_t quietRun(const Reading* first, std::size_t count) const;
    void pushQuiet(const Reading* first, std::size_t count, Asked asked);
    // A mark has allowed, or forbidden, movement from here on. Time is that of the mark.
    void placeChanged(const Place& place);
    void blind(); // readings before and after do not touch
    // The excursion still open, as it stands.
    [[nodiscard]] std::optional<Excursion> open() const;

    [[nodiscard]] Time toldFrom() const { return toldFrom_; } // of the newest excursion told, -1: none
    [[nodiscard]] Time toldTo() const { return toldTo_; }

    [[nodiscard]] const HeldLevel& level() const { return level_; }
    [[nodiscard]] bool holding() const { return state_ != State::seeking; }
    [[nodiscard]] double held_V() const { return held_V_; }
    [[nodiscard]] double threshold_V() const { return level_.threshold_V(); }

private:
    enum class State { seeking, held, away };

    ReadingClass seek(Time time, double volts_V, Asked asked);
    ReadingClass hold(Time time, double volts_V, Asked asked);
    ReadingClass stayAway(Time time, double volts_V, Asked asked);
    void beginSeek(Time lastHeld, Time first, double volts_V);
    void beginExcursion(Time time, double volts_V, Asked asked);
    void setHold(Time time);
    void restartLevel();
    void endExcursion(double next_V);
    [[nodiscard]] bool rested() const; // the open excursion, before it came back
    bool passOn(Time time, double volts_V);
    void tellPassing();
    bool followRun(Time time, double volts_V); // true if this reading began a new run
    bool settledElsewhere(Time time, Asked asked);
    void settle(Time time, double volts_V, Asked asked);
    [[nodiscard]] Excursion excursionOnTheWay() const;
    void tellExcursionOnTheWay();
    void takeForMovement(); // the open excursion
    void tellWhileSettling(double level_V);
    [[nodiscard]] bool wentAndCame(double settled_V) const;
    [[nodiscard]] bool mayMove(Time time, Asked asked) const;
    [[nodiscard]] bool inAnotherWindow(double volts_V) const;
    [[nodiscard]] double settleTolerance_V() const;
    void accept(Time time, double volts_V, bool anew);
    void tellEnded(const Excursion& excursion, bool shoulder);
    void tellHeld(Time time, double volts_V, bool anew);

    HeldLevel level_;
    DipDetector dip_;
    double play_V_;
    std::vector<Window> windows_;
    TrackerListener* listener_;
    Time toldFrom_{-1}, toldTo_{-1};
    State state_ = State::seeking;
    double held_V_ = 0;  // level_.level_V() of now, kept for speed
    double limit_V_ = 0; // threshold_V() of now
    bool foot_ = false;
    bool footLeaves_ = false;
    bool sweeping_ = false;
    std::optional<double> home_V_; // the level last left while nothing was judged
    Time leftHome_{0};
    bool free_ = false;    // nothing is judged
    bool wasFree_ = false; // until a moment ago; no reading since

    // Movement that a mark asked for.
    bool moveAsked_ = false; // and has not come yet
    Probed wire_ = Probed::signal;
    bool needleComes_ = false; // from another wire, and has not come yet
    int stepVisit_ = -1;
    bool inPose_ = false;
    Time lastExcursion_{-1000000000};
    Asked excursionAsked_ = Asked::unmarked; // where the open excursion began
    Time graceUntil_{-1};                    // a little longer: the hand corrects itself

    // Seeking: the first of the readings that lie together so far, and where it started from.
    std::optional<double> before_V_;
    Time beforeTime_{0};
    Time seekFrom_{0};
    Time seekFirst_{0};
    double seekNewest_V_ = 0;
    Time seekAwayTo_{0}; // the reading before `before_V_`
    int seekAwayReadings_ = 0;
    double seekExtreme_V_ = 0;
    int seekReadings_ = 0;
    std::optional<double> left_V_; // the level left, if any
    bool surelyMoved_ = false;     // and coming back to it is a movement too
    bool slowly_ = false;          // two near readings are no rest yet
    // A movement that no mark asked for by itself: it came within the grace after one, and may come back.
    struct Detour {
        double left_V = 0;
        Excursion excursion;
        Time from{0};
    };
    std::optional<Detour> detour_;
    bool byGrace_ = false; // this search began so
    int sinceSettled_ = 0;
    int settleDirection_ = 0; // of the movement that ended in this level
    double settleMove_V_ = 0; // and how far it went

    // Nothing marked: an excursion that rested elsewhere and is back, if it stays. One that passes its level and goes
    // on beyond it was a hand on its way.
    struct Passing {
        Excursion excursion;
        bool shoulder = false;
        Time lastHeld{0}; // before it
        Time back{0};     // and where; of late, if it goes on moving
        double back_V = 0;
    };
    std::optional<Passing> passing_;

    // Away.
    Excursion excursion_;
    SlowDeparture departure_;
    bool shoulderBefore_ = false;
    double lastOffset_V_ = 0;
    Time lastHeld_{0};
    // Runs of readings that lie together: those before the newest, and the newest.
    struct Run {
        Time from{0}, to{0};
        double level_V = 0;
        int readings = 0;
    };
    std::vector<Run> runs_;
    double runSum_V_ = 0;
    int runCount_ = 0;
    Time runFrom_{0}, runTo_{0};
    double beforeRunExtreme_V_ = 0; // of the excursion before this run began
    int beforeRunReadings_ = 0;
    Time beforeRunTo_{0};
};

} // namespace stillwire
