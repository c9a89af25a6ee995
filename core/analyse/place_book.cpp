// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/place_book.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kMostTurns = 1000;

Asked askedIn(Step step) {
    switch (step) {
    case Step::hookUp:
    case Step::lift:
    case Step::adjust:
    case Step::putBack: return Asked::free;
    case Step::reference: // the needle is on its way, and may hang in the air first
    case Step::ground:
    case Step::fullPress:
    case Step::release:
    case Step::confirm: return Asked::moving;
    case Step::sweep: return Asked::sweep;
    default: return Asked::still;
    }
}

Probed wireIn(Step step) {
    if (step == Step::reference || step == Step::wiggleReference) return Probed::reference;
    if (step == Step::ground || step == Step::wiggleGround) return Probed::ground;
    return Probed::signal;
}

bool wiggles(Step step) {
    return step == Step::wiggleShaft || step == Step::wiggleHarness || step == Step::warmRepeat ||
           step == Step::wiggleReference || step == Step::wiggleGround;
}

bool alongHarness(std::string_view where, std::optional<Step> step) {
    if (step == Step::wiggleHarness) return true;
    if (step == Step::wiggleShaft) return false;
    return where != "left" && where != "right";
}

} // namespace

PlaceBook::PlaceBook(const Sheet& sheet) : sheet_(&sheet) { places_.emplace_back(); }

std::size_t PlaceBook::indexAt(Time time) const {
    std::size_t index = places_.size() - 1;
    while (index > 0 && places_[index].from > time) --index;
    return index;
}

bool PlaceBook::undone(int stepVisit) const {
    return stepVisit >= 0 && visits_[static_cast<std::size_t>(stepVisit)].undone;
}

bool PlaceBook::did(Step step) const {
    return std::any_of(visits_.begin(), visits_.end(),
                       [&](const StepVisit& v) { return v.step == step && !v.undone; });
}

void PlaceBook::countReadings(int count) {
    if (const int pose = now().poseIndex; pose >= 0) poses_[static_cast<std::size_t>(pose)].readings += count;
}

void PlaceBook::countHeld(int index, const Reading* first, std::size_t count, double held_V, double lean_V) {
    if (index < 0) return;
    Pose& pose = poses_[static_cast<std::size_t>(index)];
    for (const Reading* r = first; r != first + count; ++r) {
        pose.heldSum_V += r->volts_V;
        if (r->volts_V - held_V >= lean_V) ++pose.leansUp;
        if (held_V - r->volts_V >= lean_V) ++pose.leansDown;
        ++pose.held;
    }
}

void PlaceBook::closePose(Time time) {
    if (!poses_.empty() && !poses_.back().closed) {
        poses_.back().to = time;
        poses_.back().closed = true;
    }
}

void PlaceBook::closeStep(Time time) {
    closePose(time);
    if (!visits_.empty() && !visits_.back().closed) {
        visits_.back().to = time;
        visits_.back().closed = true;
    }
}

void PlaceBook::openStep(Step step, Time time) {
    closeStep(time);
    visits_.push_back({step, time, time, false, false});
    Place place = now();
    const Probed before = place.wire;
    place.from = time;
    place.step = step;
    place.stepVisit = static_cast<int>(visits_.size()) - 1;
    place.poseIndex = -1;
    place.wire = wireIn(step);
    place.asked = keyOff_ ? Asked::free : askedIn(step);
    // After the leads moved from one wire to another the level is elsewhere, and nobody is to blame.
    place.moveAsked = place.wire != before;
    if (step == Step::warmRepeat) place.warm = true;
    if (step == Step::coldStart) place.warm = false;
    // Every step but those that say otherwise begins with the pedal at rest.
    if (place.wire == Probed::signal && place.asked == Asked::still)
        place.position = static_cast<int>(&sheet_->rest() - sheet_->positions.data());
    else
        place.position = -1;
    place.foot = false;
    add(place);
}

bool PlaceBook::push(const Mark& mark) {
    const std::string_view argument = mark.argument();
    Place place = now();
    place.from = mark.time;
    place.moveAsked = false;
    switch (mark.kind()) {
    case MarkKind::step: {
        const std::optional<Step> step = stepByName(argument);
        if (!step) return false;
        openStep(*step, mark.time);
        return true;
    }
    case MarkKind::stepEnd:
        closeStep(mark.time);
        place.step.reset();
        place.poseIndex = -1;
        place.position = -1;
        place.foot = false;
        place.wire = Probed::signal;
        place.asked = Asked::free;
        add(place);
        return true;
    case MarkKind::pose:
        closePose(mark.time);
        if (!place.step || wiggles(*place.step)) {
            Pose pose;
            pose.from = pose.to = mark.time;
            pose.where = std::string(argument);
            pose.harness = alongHarness(argument, place.step);
            pose.step = place.step;
            pose.stepVisit = place.stepVisit;
            poses_.push_back(std::move(pose));
            place.poseIndex = static_cast<int>(poses_.size()) - 1;
        } else {
            place.poseIndex = -1;
        }
        add(place);
        return false;
    case MarkKind::position: {
        closePose(mark.time);
        const Position* position = sheet_->find(argument);
        const int index = position ? static_cast<int>(position - sheet_->positions.data()) : -1;
        place.moveAsked = index != place.position || index < 0;
        place.position = index;
        place.foot = position && !position->rest;
        place.poseIndex = -1;
        if (place.asked == Asked::moving || place.asked == Asked::still || place.asked == Asked::unmarked)
            place.asked = Asked::positions;
        add(place);
        return true;
    }
    case MarkKind::keyOff:
        keyOff_ = true;
        place.asked = Asked::free;
        place.poseIndex = -1;
        closePose(mark.time);
        add(place);
        return true;
    case MarkKind::keyOn:
        keyOff_ = false;
        place.asked = place.step ? askedIn(*place.step) : (anyStep() ? Asked::free : Asked::unmarked);
        place.moveAsked = true;
        add(place);
        return true;
    case MarkKind::skip:
        if (const std::optional<Step> step = stepByName(argument)) skipped_.push_back(*step);
        return false;
    case MarkKind::undo:
        if (const std::optional<Step> step = stepByName(argument)) {
            // The newest visit that still counts; undoing a skip takes the skip back.
            for (auto it = visits_.rbegin(); it != visits_.rend(); ++it) {
                if (it->step == *step && !it->undone) {
                    it->undone = true;
                    break;
                }
            }
            std::erase(skipped_, *step);
        }
        return false;
    case MarkKind::turn: {
        double turns = 0;
        std::string_view number = argument;
        if (!number.empty() && number.front() == '+') number.remove_prefix(1);
        std::from_chars(number.data(), number.data() + number.size(), turns);
        if (std::abs(turns) <= kMostTurns) place.turns += turns;
        ++place.turnCount;
        add(place);
        return false;
    }
    case MarkKind::arm:
        if (argument == "on-stop") armOnStop_ = true;
        if (argument == "off-stop") armOnStop_ = false;
        armAnswered_ = mark.time;
        return false;
    default: return false;
    }
}

} // namespace stillwire
