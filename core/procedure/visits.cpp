// SPDX-License-Identifier: GPL-3.0-or-later
// Steps made of stays at positions: full-press, release, confirm.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr int kReadingsAtPosition = 5;
constexpr double kStay_s = 2;
constexpr int kReleases = 5;         // three are required; common practice, no source: ten
constexpr int kReleasesIfLoose = 10; // when the first ones do not agree
constexpr int kPressRounds = 2;      // one visit is none
constexpr int kConfirmRounds = 3;    // what was measured before the turn no longer counts

class Visits : public Activity {
public:
    explicit Visits(Step step) : step_(step) {}

    void begin(const Bench& bench) override {
        for (const Position& p : bench.sheet.positions)
            if (!p.rest) working_.push_back(p.name);
        go(bench);
    }

    void tick(const Bench& bench) override {
        if (over_ || !settled(bench)) return;
        if (atRest()) ++returns_;
        ++leg_;
        if (returns_ >= wanted(bench))
            over_ = true;
        else
            go(bench);
    }

    [[nodiscard]] bool done(const Bench&) const override { return over_; }

    void show(Prompt& prompt, const Bench& bench) const override {
        const int all = wanted(bench), left = std::max(0, all - returns_);
        prompt.position = target_;
        prompt.instruction = {atRest() ? phrases::kLetGoTo : phrases::kGoTo, {byName(target_)}};
        prompt.wanted = (step_ == Step::release ? phrases::kReleases : phrases::kPlaces)(left);
        prompt.progress = all > 0 ? static_cast<double>(returns_) / all : 1;
    }

private:
    // Each working position is followed by a return to rest; a lever that rests in the middle so visits either side.
    [[nodiscard]] bool atRest() const { return leg_ % 2 == 1; }

    [[nodiscard]] int wanted(const Bench& bench) const {
        const int sides = static_cast<int>(working_.size());
        if (step_ == Step::fullPress) return kPressRounds * sides;
        if (step_ == Step::confirm) return kConfirmRounds * sides;
        const int loose = looseReturns(bench) ? kReleasesIfLoose : kReleases;
        return std::max(loose, sides);
    }

    [[nodiscard]] bool looseReturns(const Bench& bench) const {
        const PositionLevel* rest = bench.position(bench.sheet.rest().name);
        if (rest == nullptr) return false;
        const bool hung =
            std::any_of(rest->visits.begin(), rest->visits.end(), [](const Visit& v) { return v.stoppedShort(); });
        return hung || rest->spread_V.value_or(0) > bench.sheet.play_V;
    }

    [[nodiscard]] bool settled(const Bench& bench) const {
        const Visit* visit = bench.visitSince(target_, since_);
        return visit != nullptr && visit->readings >= kReadingsAtPosition &&
               toSeconds(bench.now - visit->from) >= kStay_s;
    }

    void go(const Bench& bench) {
        const std::size_t side = static_cast<std::size_t>(leg_ / 2) % working_.size();
        target_ = atRest() ? bench.sheet.rest().name : working_[side];
        since_ = bench.now;
        bench.mark(PositionMark{target_});
    }

    Step step_;
    std::vector<std::string> working_;
    std::string target_;
    Time since_{0};
    int leg_ = 0, returns_ = 0;
    bool over_ = false;
};

} // namespace

std::unique_ptr<Activity> makeVisits(Step step) { return std::make_unique<Visits>(step); }

} // namespace stillwire
