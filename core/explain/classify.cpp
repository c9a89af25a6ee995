// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/classify.hpp"

#include "core/stats/robust.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {
constexpr double kShoulderShare = 0.4;
constexpr int kLeaps = 1;                 // readings on the way of a level that leapt
constexpr double kLeapShare = 0.5;        // of the way, in its last step
constexpr double kFarShare = 0.85;        // of the depth: at the far end
constexpr std::size_t kMostPoints = 4096; // of an excursion that are looked at; what is longer has no way back

bool leans(double offset_V, double depth_V) {
    return offset_V * depth_V > 0 && std::abs(offset_V) >= kShoulderShare * std::abs(depth_V);
}
} // namespace

void Classifier::otherWire() {
    level_ = -1;
    moving_ = false;
    movingReadings_ = 0;
    open_.reset();
}

void Classifier::openExcursion(const Reading& reading, const Segment& segment) {
    Excursion e;
    e.from = reading.time;
    e.held_V = offLine_ ? lastMoving_.volts_V : segment.level_V;
    e.extreme_V = reading.volts_V;
    e.threshold_V = segment.threshold_V;
    e.open = true;
    open_ = e;
    points_.clear();
    shoulderBefore_ = !offLine_ && leans(before_.volts_V - e.held_V, reading.volts_V - e.held_V);
}

void Classifier::addToExcursion(const Reading& reading) {
    Excursion& e = *open_;
    e.to = reading.time;
    ++e.readings;
    if (points_.size() < kMostPoints) points_.push_back({reading.time, reading.volts_V});
    if (std::abs(reading.volts_V - e.held_V) > e.depth_V()) e.extreme_V = reading.volts_V;
    e.direction = e.extreme_V < e.held_V ? Direction::down : Direction::up;
}

void Classifier::closeExcursion(const Reading& next) {
    if (!open_) return;
    Excursion e = *open_;
    open_.reset();
    e.open = false;
    if (offLine_) {
        // Off the straight line between its neighbours, where it is furthest off.
        const double over_s = std::max(1e-6, toSeconds(next.time - lastMoving_.time));
        double deepest_V = -1;
        for (const Point& p : points_) {
            const double share = toSeconds(p.time - lastMoving_.time) / over_s;
            const double due_V = lastMoving_.volts_V + share * (next.volts_V - lastMoving_.volts_V);
            if (std::abs(p.volts_V - due_V) <= deepest_V) continue;
            deepest_V = std::abs(p.volts_V - due_V);
            e.held_V = due_V;
            e.extreme_V = p.volts_V;
        }
        e.direction = e.extreme_V < e.held_V ? Direction::down : Direction::up;
    }
    lookAtItsEnd(e);
    const bool shoulder = !offLine_ && (shoulderBefore_ || leans(next.volts_V - e.held_V, e.extreme_V - e.held_V));
    explained_->excursion(e, shoulder);
}

// What its far end is like: the readings within a seventh of the depth, from the first of them to the last.
void Classifier::lookAtItsEnd(Excursion& e) const {
    const auto far = [&](const Point& p) {
        return std::abs(p.volts_V - e.held_V) >= kFarShare * e.depth_V() &&
               (p.volts_V < e.held_V) == (e.direction == Direction::down);
    };
    const auto first = std::find_if(points_.begin(), points_.end(), far);
    const auto last = std::find_if(points_.rbegin(), points_.rend(), far).base();
    if (first == points_.end()) return;
    std::vector<double> there;
    for (auto p = first; p != last; ++p) there.push_back(p->volts_V);
    e.farReadings = static_cast<int>(there.size());
    e.far_V = medianOf(there);
    const auto [low, high] = std::minmax_element(there.begin(), there.end());
    e.farSpread_V = *high - *low;
}

// At a level that is another than the one before.
void Classifier::arrive(const Reading& reading, const Segment& segment) {
    if (level_ >= 0) {
        Movement m;
        m.from = moving_ ? movedFrom_ : newest_;
        m.first = moving_ ? movedFirst_ : reading.time;
        m.to = reading.time;
        m.from_V = level_V_;
        m.to_V = segment.level_V;
        // A level that was followed as it crept has moved, and not leapt.
        const bool atOnce = std::abs(reading.volts_V - heldLast_V_) >= kLeapShare * std::abs(m.to_V - m.from_V);
        m.leapt = movingReadings_ <= kLeaps && atOnce;
        m.unasked = segment.unasked || movedUnasked_;
        explained_->moved(m);
    }
    moving_ = movedUnasked_ = false;
    movingReadings_ = 0;
}

void Classifier::readings(const Reading* first, std::size_t count, int context, const Segment& segment, bool begins) {
    const bool off = segment.doing == Doing::away || segment.doing == Doing::offLine;
    if (begins && open_) closeExcursion(*first);
    switch (segment.doing) {
    case Doing::held: {
        const bool anew = segment.level != level_;
        if (anew || moving_) arrive(*first, segment);
        level_ = segment.level;
        level_V_ = segment.level_V;
        heldLast_V_ = first[count - 1].volts_V;
        explained_->held(first, count, context, segment, anew);
        break;
    }
    case Doing::moving:
        if (begins) movedUnasked_ = movedUnasked_ || segment.unasked;
        if (!moving_) {
            movedFrom_ = newest_;
            movedFirst_ = first->time;
        }
        moving_ = true;
        for (const Reading* r = first; r != first + count; ++r) {
            explained_->moving(*r, context);
            ++movingReadings_;
            lastMoving_ = {r->time, r->volts_V};
        }
        break;
    case Doing::away:
    case Doing::offLine:
        if (begins) {
            offLine_ = segment.doing == Doing::offLine;
            openExcursion(*first, segment);
        }
        for (const Reading* r = first; r != first + count; ++r) {
            if (open_) addToExcursion(*r);
            explained_->away(*r, context, segment);
        }
    }
    newest_ = first[count - 1].time;
    if (!off) before_ = {first[count - 1].time, first[count - 1].volts_V};
}

std::optional<Excursion> Classifier::open() const { return open_; }

} // namespace stillwire
