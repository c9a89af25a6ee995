// SPDX-License-Identifier: GPL-3.0-or-later
// Turning the sensor to its aim, with the aim in what the meter shows.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kTighten_s = 6;   // steady at the aim this long: hands are off, screws are tight
constexpr double kWithin = 0.15;   // of the half-window counts as on the aim
constexpr double kTurnTakes_s = 4; // from the key for a part-turn to the level it leads to

class Adjust : public Activity {
public:
    void begin(const Bench& bench) override {
        rest_ = bench.sheet.rest().name;
        bench.mark(PositionMark{rest_});
        toldAt_ = bench.now;
        told_V_ = bench.held_V();
        aim(bench);
    }
    void tick(const Bench& bench) override {
        aim(bench);
        if (toSeconds(bench.now - toldAt_) < kTurnTakes_s && counted_) told_V_ = bench.held_V();
        const bool there = bench.steady() && std::abs(bench.held_V() - aim_V_) <= within_V_;
        onAim_.see(there, bench.now);
        if (onAim_.for_s(bench.now) >= kTighten_s) end(bench);
    }
    void command(Command command, const Bench& bench) override {
        if (command == Command::turnIn || command == Command::turnOut) {
            bench.mark(TurnMark{command == Command::turnIn ? 1.0 : -1.0});
            // A turn ends the stay at this level; what settles next is another one.
            bench.mark(PositionMark{rest_});
            onAim_ = {};
            toldAt_ = bench.now;
            counted_ = true;
        }
        if (command == Command::next) end(bench);
    }
    [[nodiscard]] bool done(const Bench&) const override { return over_; }
    void show(Prompt& prompt, const Bench& bench) const override {
        prompt.position = rest_;
        prompt.aim_V = aim_V_;
        prompt.aimWithin_V = within_V_;
        const int decimals = bench.findings->meter.resolution_V >= 0.01 ? 2 : 3;
        prompt.instruction = {phrases::kTurnTo, {volts(aim_V_, decimals)}};
        const double off_V = std::abs(bench.held_V() - aim_V_);
        if (onAim_.holds()) {
            prompt.instruction = {phrases::kTighten, {}};
            prompt.progress = std::min(1.0, 0.5 + 0.5 * onAim_.for_s(bench.now) / kTighten_s);
        } else {
            prompt.wanted = {phrases::kOffBy, {volts(off_V, decimals)}};
            prompt.progress = start_V_ > 0 ? std::clamp(0.5 * (1 - off_V / start_V_), 0.0, 0.5) : 0;
        }
    }

private:
    // Both hands are on the sensor: it may have been turned with no key pressed. What was read before must then not
    // be mixed with what comes, so a turn of unknown size is marked.
    void end(const Bench& bench) {
        const double moved_V = std::abs(bench.held_V() - told_V_);
        if (moved_V > std::max(bench.sheet.play_V, 6 * bench.findings->meter.noise_V)) bench.mark(TurnMark{0});
        over_ = true;
    }
    // The aim is a level to reach, so it stands still while the sensor is turned: what is learned on the way is for
    // the next round, once every end was measured again.
    void aim(const Bench& bench) {
        if (aim_V_ == 0) {
            const AdjustmentAdvice& advice = bench.findings->adjustment;
            const auto target = advice.targetRaw_V.find(rest_);
            aim_V_ = target != advice.targetRaw_V.end() ? target->second : bench.sheet.rest().aim_V;
        }
        within_V_ = std::max({kWithin * bench.sheet.rest().window.half_V(), 2 * bench.findings->meter.resolution_V,
                              3 * bench.findings->meter.noise_V});
        if (start_V_ == 0) start_V_ = std::abs(bench.held_V() - aim_V_);
    }
    std::string rest_;
    double aim_V_ = 0, within_V_ = 0, start_V_ = 0;
    Holding onAim_;
    Time toldAt_{0}; // when the last counted turn was told, and the level it led to
    double told_V_ = 0;
    bool over_ = false, counted_ = false;
};

} // namespace

std::unique_ptr<Activity> makeAdjust() { return std::make_unique<Adjust>(); }

} // namespace stillwire
