// SPDX-License-Identifier: GPL-3.0-or-later
// SettledReadings readings put together to what a person would name: excursions that came back, movements, jumps,
// levels held.
#pragma once

#include "core/explain/search.hpp"
#include "core/findings/findings.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// From one held level to another. Volts shown.
struct Movement {
    Time from{0};  // of the last reading before it
    Time first{0}; // of its first reading
    Time to{0};    // of the first at the new level
    double from_V = 0, to_V = 0;
    bool leapt = false;   // no more than a reading on the way
    bool unasked = false; // a step asked to hold
};

// Takes what the classifier makes of the readings, in order of time; nothing is taken back.
class Explained {
public:
    virtual ~Explained() = default;
    // Readings at the level; `anew`: the first at another level than before.
    virtual void held(const Reading* first, std::size_t count, int context, const Segment& level, bool anew) = 0;
    virtual void away(const Reading& reading, int context, const Segment& level) = 0;
    virtual void moving(const Reading& reading, int context) = 0;
    // It came back, or the wire went on to somewhere else. `shoulder`: a neighbour outside it leant the same way, so
    // that it looks like a shifted level rather than a dip.
    virtual void excursion(const Excursion& excursion, bool shoulder) = 0;
    virtual void moved(const Movement& movement) = 0;
};

class Classifier final : public SettledReadings {
public:
    explicit Classifier(Explained& explained) : explained_(&explained) {}
    // The same, telling somebody else.
    Classifier(const Classifier& other, Explained& explained) : Classifier(other) { explained_ = &explained; }

    void readings(const Reading* first, std::size_t count, int context, const Segment& segment, bool begins) override;
    void otherWire(); // whatever level comes next is no movement
    // The excursion that is still open, as it stands.
    [[nodiscard]] std::optional<Excursion> open() const;

private:
    struct Point {
        Time time{0};
        double volts_V = 0;
    };
    void openExcursion(const Reading& reading, const Segment& segment);
    void addToExcursion(const Reading& reading);
    void closeExcursion(const Reading& next);
    void lookAtItsEnd(Excursion& e) const;
    void arrive(const Reading& reading, const Segment& segment);

    Explained* explained_;
    std::int64_t level_ = -1; // id of the newest held
    double level_V_ = 0;
    double heldLast_V_ = 0;     // its newest reading
    Point lastMoving_, before_; // before_: of the newest that was not away
    Time newest_{0};
    bool moving_ = false, movedUnasked_ = false;
    int movingReadings_ = 0;
    Time movedFrom_{0}, movedFirst_{0};
    std::optional<Excursion> open_;
    bool offLine_ = false, shoulderBefore_ = false;
    std::vector<Point> points_; // of the open excursion, up to kMostPoints
};

} // namespace stillwire
