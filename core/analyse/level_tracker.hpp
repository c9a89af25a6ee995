// SPDX-License-Identifier: GPL-3.0-or-later
// Follows the level of one wire: held, away from it, or moving to another. Streaming, one reading at a time.
#pragma once

#include "core/analyse/held_level.hpp"
#include "core/analyse/leave.hpp"
#include "core/analyse/level_search.hpp"
#include "core/analyse/open_excursion.hpp"
#include "core/analyse/passing.hpp"
#include "core/analyse/settling.hpp"
#include "core/domain/timeline.hpp"
#include "core/findings/findings.hpp"

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

    ReadingClass push(Time time, double volts_V, ExpectedMotion asked);
    // As push() of each, for readings that would only be held and from which nothing is learned yet: how many may
    // be; how near to the level, after this time; and those.
    [[nodiscard]] std::size_t mostQuiet() const;
    [[nodiscard]] double quietReach_V(Time after) const;
    void pushQuiet(const Reading* first, std::size_t count, ExpectedMotion asked);
    // A mark has allowed, or forbidden, movement from here on. Time is that of the mark.
    void placeChanged(const Context& place);
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

    ReadingClass seek(Time time, double volts_V, ExpectedMotion asked);
    ReadingClass hold(Time time, double volts_V, ExpectedMotion asked);
    ReadingClass stayAway(Time time, double volts_V, ExpectedMotion asked);
    void beginSearch(const LevelSearch::Start& start);
    // From the level held, with the first reading off it and the newest.
    [[nodiscard]] LevelSearch::Start leaving(Time first, double newest_V, Time newest) const;
    void settle(Time time, double volts_V, ExpectedMotion asked);
    void beginExcursion(Time time, double volts_V, ExpectedMotion asked);
    void endExcursion(double next_V);
    void settleElsewhere(Time time, OpenExcursion::Settled how);
    void takeForMovement(); // the open excursion
    void tellJump();        // that the open excursion has become
    bool passOn(Time time, double volts_V);
    void tellPassing();
    void tellInHindsight(const Excursion& excursion);
    void tellEnded(const Excursion& excursion, bool shoulder);
    void tellHeld(Time time, double volts_V, bool anew);
    void accept(Time time, double volts_V, bool anew);
    void adopt(); // the level's newest figures
    void setHold(Time time);
    void restartLevel();
    [[nodiscard]] bool inAnotherWindow(double volts_V) const;
    [[nodiscard]] double settleTolerance_V() const;
    [[nodiscard]] double together_V() const;

    HeldLevel level_;
    double play_V_;
    std::vector<Window> windows_;
    TrackerListener* listener_;
    Time toldFrom_{-1}, toldTo_{-1};
    State state_ = State::seeking;
    double held_V_ = 0;  // level_.level_V() of now, kept for speed
    double limit_V_ = 0; // threshold_V() of now
    double lastOffset_V_ = 0;
    Time lastHeld_{0};
    Settling settling_;

    // What the marks say.
    Leave leave_;
    bool foot_ = false;
    bool footLeaves_ = false;
    bool sweeping_ = false;
    bool inPose_ = false;
    Time lastExcursion_{-1000000000};

    LevelSearch search_; // while seeking
    OpenExcursion away_; // while away
    Passing passing_;    // back from it, perhaps
    // A movement that no mark asked for by itself: it came within the grace after one, and may come back.
    struct Detour {
        double left_V = 0;
        Excursion excursion;
        Time from{0};
    };
    std::optional<Detour> detour_;
};

} // namespace stillwire
