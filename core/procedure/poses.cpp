// SPDX-License-Identifier: GPL-3.0-or-later
// Steps made of held poses: the wiggles, and the second look when warm.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stillwire {

namespace {

constexpr int kPosesWanted = 29; // clean ones: one fault in ten poses shows with 95 % (1 - 0.9^29)
constexpr int kPosesAtMost = 90; // a meter that stays blind must not keep a hand wiggling for ever
constexpr int kPosesArmHeld = 6;
constexpr int kAlongEvery = 5;
constexpr std::array kAlong{Side::in, Side::out, Side::tap};
constexpr const char *kRedLead = "red-lead", *kBlackLead = "black-lead"; // as in marks
constexpr double kNextPlace_s = 2;                                       // for the hand to get there
constexpr double kWarmAfter_s = 10 * 60; // common practice, no source: 10 to 15 minutes

class Poses : public Activity {
public:
    Poses(Step step, int sections, bool armHeld)
        : step_(step), armHeld_(armHeld), warm_(traits(step).warmth == Warmth::warm),
          sections_(std::max(1, sections)), section_(traits(step).wiggled == Wiggled::harness ? 1 : 0) {
        place_ = step == Step::leadCheck ? PosePlace{kRedLead, {}} : PosePlace::at(Side::left, section_);
    }

    void begin(const Bench& bench) override {
        before_ = counted(bench);
        bench.mark(PositionMark{bench.sheet.rest().name});
        if (armHeld_) bench.mark(ArmMark{Arm::held});
        if (!waiting(bench)) pose(bench);
    }

    void tick(const Bench& bench) override {
        if (made_ == 0) {
            if (!waiting(bench)) pose(bench);
            return;
        }
        if (holding(bench) || enough(bench)) return;
        pose(bench);
    }

    void command(Command command, const Bench& bench) override {
        if (command != Command::next || enough(bench)) return;
        hurried_ = true;
        pose(bench);
    }

    [[nodiscard]] bool done(const Bench& bench) const override {
        return made_ > 0 && !holding(bench) && enough(bench);
    }

    void show(Prompt& prompt, const Bench& bench) const override {
        if (made_ == 0) {
            prompt.detail = {phrases::kWarmWait, {plain(kWarmAfter_s / 60, 0)}};
            const double passed = toSeconds(bench.now - bench.keyOn), left_s = kWarmAfter_s - passed;
            prompt.progress = std::clamp(passed / kWarmAfter_s, 0.0, 1.0);
            prompt.wanted = left_s > 90 ? phrases::kMinutes(static_cast<int>(std::ceil(left_s / 60)))
                                        : phrases::kSeconds(static_cast<int>(std::ceil(left_s)));
            return;
        }
        const int left = missing(bench), seen = counted(bench);
        prompt.wanted = phrases::kPoses(left);
        prompt.progress = seen + left > 0 ? static_cast<double>(seen) / (seen + left) : 1;
        prompt.asked = AskedPose{.place = place_, .for_s = hold_s_, .since = poseSince_};
        if (step_ == Step::wiggleHarness) {
            prompt.pose = {place_.side() == Side::left ? phrases::kSectionLeft : phrases::kSectionRight,
                           {std::to_string(section_)}};
            prompt.detail = {phrases::kSectionsAre, {std::to_string(sections_)}};
        } else if (step_ == Step::leadCheck) {
            prompt.pose = {place_.area == kRedLead ? phrases::kRedLead : phrases::kBlackLead, {}};
        } else {
            prompt.pose = {phrases::kPush(place_.side().value_or(Side::left)), {}};
        }
        const StepCoverage* c = bench.coverage(step_);
        if (c != nullptr && c->poses > 0 && !c->posesFor95) prompt.detail = {phrases::kCannotSee, {}};
    }

private:
    [[nodiscard]] bool waiting(const Bench& bench) const {
        return warm_ && !hurried_ && toSeconds(bench.now - bench.keyOn) < kWarmAfter_s;
    }
    // A pose ends when its time is up and the meter has looked at it; a meter that has fallen silent gets one more
    // hold.
    [[nodiscard]] bool holding(const Bench& bench) const {
        const double held_s = toSeconds(bench.now - poseSince_);
        if (held_s < hold_s_) return true;
        const bool looked = bench.findings->readings >= readingsAtPose_ + kReadingsPerPose;
        return !looked && held_s < 2 * hold_s_;
    }
    [[nodiscard]] int counted(const Bench& bench) const {
        const StepCoverage* c = bench.coverage(step_);
        return c != nullptr ? c->poses : 0;
    }
    [[nodiscard]] int missing(const Bench& bench) const {
        if (made_ >= kPosesAtMost) return 0;
        if (armHeld_) return std::max(0, kPosesArmHeld - (counted(bench) - before_));
        // Each lead check is one of its own.
        if (step_ == Step::leadCheck) return std::max(0, 2 * kPosesOfALead - (counted(bench) - before_));
        const StepCoverage* c = bench.coverage(step_);
        if (c != nullptr && c->poses > 0 && c->posesFor95) return *c->posesFor95 + c->again;
        return std::max(0, kPosesWanted - counted(bench));
    }
    [[nodiscard]] bool enough(const Bench& bench) const { return missing(bench) == 0; }
    // The first that still wants poses; the one in hand where all have enough.
    [[nodiscard]] int nextSection(const Bench& bench) const {
        int number = 0;
        for (const StepCoverage& one : bench.findings->steps) {
            if (one.step != step_ || one.section.empty()) continue;
            ++number;
            if (one.posesFor95.value_or(0) + one.again > 0) return number;
        }
        return section_;
    }
    // To either side by turns; of the shaft, every fifth along it or a tap on the body.
    [[nodiscard]] Side nextSide() const {
        const bool along = (step_ == Step::wiggleShaft || step_ == Step::connectorHeld) && !armHeld_;
        if (along && made_ % kAlongEvery == 0)
            return kAlong[static_cast<std::size_t>(made_ / kAlongEvery) % kAlong.size()];
        return made_ % 2 == 1 ? Side::left : Side::right;
    }
    [[nodiscard]] PosePlace nextPlace(const Bench& bench) {
        if (step_ == Step::wiggleHarness) section_ = nextSection(bench);
        PosePlace place = PosePlace::at(nextSide(), section_);
        if (step_ == Step::leadCheck) place.area = counted(bench) - before_ < kPosesOfALead ? kRedLead : kBlackLead;
        return place;
    }

    void pose(const Bench& bench) {
        ++made_;
        const StepCoverage* c = bench.coverage(step_);
        hold_s_ = bench.pace.hold_s(bench.interval_s(), c != nullptr ? c->shortestVisible_s.value_or(0) : 0);
        const PosePlace before = std::exchange(place_, nextPlace(bench));
        if (place_.area != before.area) hold_s_ += kNextPlace_s;
        poseSince_ = bench.now;
        readingsAtPose_ = bench.findings->readings;
        bench.mark(PoseMark{place_});
    }

    Step step_;
    bool armHeld_, warm_, hurried_ = false;
    int sections_, section_;
    int before_ = 0; // poses counted when the step was opened
    Time poseSince_{0};
    double hold_s_ = 0;
    int made_ = 0;
    PosePlace place_; // of the pose in hand; before the first, where it begins
    std::size_t readingsAtPose_ = 0;
};

} // namespace

std::unique_ptr<Activity> makePoses(Step step, int sections, bool armHeld) {
    return std::make_unique<Poses>(step, sections, armHeld);
}

} // namespace stillwire
