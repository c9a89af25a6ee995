// SPDX-License-Identifier: GPL-3.0-or-later
// The slow sweep from end to end, and the question about the stop.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kNear = 0.1;     // of the way between two levels counts as there
constexpr double kHomeFor_s = 2;  // back and at rest: the hand has let go
constexpr double kAsk_s = 60;     // for an answer about the stop
constexpr double kAskIdle_s = 20; // when nothing hangs on it

class Sweep : public Activity {
public:
    void begin(const Bench& bench) override {
        for (const Position& p : bench.sheet.positions)
            if (!p.rest) ends_.push_back({shown(bench, p), false});
        rest_V_ = shown(bench, bench.sheet.rest());
    }
    void tick(const Bench& bench) override {
        const double v = bench.held_V();
        for (End& end : ends_)
            if (share(v, end) > 1 - kNear) end.reached = true;
        const bool all = std::all_of(ends_.begin(), ends_.end(), [](const End& e) { return e.reached; });
        const bool home = std::all_of(ends_.begin(), ends_.end(), [&](const End& e) { return share(v, e) < kNear; });
        home_.see(all && home && bench.steady(), bench.now);
        if (home_.for_s(bench.now) >= kHomeFor_s) over_ = true;
    }
    void command(Command command, const Bench&) override {
        // Whether the arm went all the way is the person's to say where the wire does not show it.
        if (command == Command::next) over_ = true;
    }
    [[nodiscard]] bool done(const Bench&) const override { return over_; }
    void show(Prompt& prompt, const Bench&) const override {
        const auto reached = std::count_if(ends_.begin(), ends_.end(), [](const End& e) { return e.reached; });
        prompt.detail = {phrases::kSweepSlower, {}};
        prompt.progress = (static_cast<double>(reached) + (over_ ? 1 : 0)) / (static_cast<double>(ends_.size()) + 1);
    }

private:
    struct End {
        double at_V = 0;
        bool reached = false;
    };
    static double shown(const Bench& bench, const Position& p) {
        const PositionLevel* level = bench.position(p.name);
        return level != nullptr && level->raw_V ? *level->raw_V : p.aim_V;
    }
    [[nodiscard]] double share(double v_V, const End& end) const {
        const double span = end.at_V - rest_V_;
        return std::abs(span) < 1e-9 ? 0 : (v_V - rest_V_) / span;
    }
    std::vector<End> ends_;
    double rest_V_ = 0;
    Holding home_; // back at rest
    bool over_ = false;
};

class Lift : public Activity {
public:
    explicit Lift(bool endsByEvidence) : endsByEvidence_(endsByEvidence) {}
    void begin(const Bench& bench) override {
        since_ = bench.now;
        const PositionLevel* rest = bench.position(bench.sheet.rest().name);
        hung_ = rest != nullptr && std::any_of(rest->visits.begin(), rest->visits.end(),
                                               [](const Visit& v) { return v.stoppedShort(); });
    }
    void tick(const Bench& bench) override {
        // Nobody answered: said as left out, so that it stands in the verdict.
        const double wait_s = hung_ ? kAsk_s : kAskIdle_s;
        if (!over_ && endsByEvidence_ && toSeconds(bench.now - since_) >= wait_s) leaveOut(bench);
    }
    void command(Command command, const Bench& bench) override {
        if (over_) return;
        if (command == Command::next) return leaveOut(bench);
        if (command != Command::liftOnStop && command != Command::liftOffStop) return;
        bench.mark(ArmMark{command == Command::liftOnStop ? Arm::onStop : Arm::offStop});
        over_ = true;
    }
    [[nodiscard]] bool done(const Bench&) const override { return over_; }
    void show(Prompt& prompt, const Bench&) const override {
        prompt.choices = {{Command::liftOnStop, {phrases::kOnStop, {}}},
                          {Command::liftOffStop, {phrases::kOffStop, {}}}};
    }

private:
    void leaveOut(const Bench& bench) {
        bench.mark(SkipMark{Step::lift});
        over_ = true;
    }
    bool endsByEvidence_, hung_ = false, over_ = false;
    Time since_{0};
};

} // namespace

std::unique_ptr<Activity> makeSweep() { return std::make_unique<Sweep>(); }
std::unique_ptr<Activity> makeLift(bool endsByEvidence) { return std::make_unique<Lift>(endsByEvidence); }

} // namespace stillwire
