// SPDX-License-Identifier: GPL-3.0-or-later
// Turning the sensor to its aim, with the aim in what the meter shows.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stillwire {

namespace {

constexpr double kTighten_s = 6; // steady at the aim this long: hands are off, screws are tight
constexpr double kWithin = 0.15; // of the half-window counts as on the aim

class Adjust : public Activity {
public:
    void begin(const Bench& bench) override {
        rest_ = bench.sheet.rest().name;
        bench.mark("position:" + rest_);
        aim(bench);
    }
    void tick(const Bench& bench) override {
        aim(bench);
        const bool there = bench.steady() && std::abs(bench.held_V() - aim_V_) <= within_V_;
        if (!there)
            onAim_.reset();
        else if (!onAim_)
            onAim_ = bench.now;
        if (there && toSeconds(bench.now - *onAim_) >= kTighten_s) over_ = true;
    }
    void command(Command command, const Bench& bench) override {
        if (command == Command::turnIn || command == Command::turnOut) {
            bench.mark(command == Command::turnIn ? "turn:+1" : "turn:-1");
            // A turn ends the stay at this level; what settles next is another one.
            bench.mark("position:" + rest_);
            onAim_.reset();
        }
        if (command == Command::next) over_ = true;
    }
    [[nodiscard]] bool done(const Bench&) const override { return over_; }
    void show(Prompt& prompt, const Bench& bench) const override {
        prompt.position = rest_;
        prompt.aim_V = aim_V_;
        prompt.aimWithin_V = within_V_;
        const int decimals = bench.findings->meter.resolution_V >= 0.01 ? 2 : 3;
        prompt.instruction = {say::kTurnTo, {volts(aim_V_, decimals)}};
        const double off_V = std::abs(bench.held_V() - aim_V_);
        if (onAim_) {
            prompt.instruction = {say::kTighten, {}};
            prompt.progress = std::min(1.0, 0.5 + 0.5 * toSeconds(bench.now - *onAim_) / kTighten_s);
        } else {
            prompt.wanted = {say::kOffBy, {volts(off_V, decimals)}};
            prompt.progress = start_V_ > 0 ? std::clamp(0.5 * (1 - off_V / start_V_), 0.0, 0.5) : 0;
        }
    }

private:
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
    std::optional<Time> onAim_;
    bool over_ = false;
};

} // namespace

std::unique_ptr<Activity> makeAdjust() { return std::make_unique<Adjust>(); }

} // namespace stillwire
