// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/simulated_meter.hpp"

#include "meters/bench/simulate.hpp"
#include "meters/bench/stage.hpp"
#include "meters/decode/encode.hpp"

#include <algorithm>

namespace stillwire {
namespace {

constexpr double kGrain_s = 0.1; // the longest the bench's time goes on in one read: the procedure ticks between

class SimulatedLink final : public Link {
public:
    SimulatedLink(std::shared_ptr<bench::Stage> stage, const MeterDescription& meter, double speed,
                  std::function<Time()> clock)
        : stage_(std::move(stage)), meter_(meter), speed_(clock ? speed : 0), clock_(std::move(clock)) {
        for (const MeterRange& range : meter.traits.ranges) {
            resolution_V_ = resolution_V_ > 0 ? std::min(resolution_V_, range.resolution_V) : range.resolution_V;
        }
        if (resolution_V_ <= 0) resolution_V_ = 0.001;
    }

    Status open() override {
        if (speed_ > 0) started_ = clock_() - fromSeconds(stage_->now_s() / speed_);
        return Done{};
    }
    [[nodiscard]] int descriptor() const override { return -1; }

    LinkEvent read(std::span<std::uint8_t> buffer) override {
        LinkEvent out;
        if (sent_ == frame_.size()) next();
        out.arrived = frame_.empty() ? now() : arrived_;
        if (sent_ < frame_.size()) {
            out.kind = LinkEvent::Kind::bytes;
            out.bytes = std::min(buffer.size(), frame_.size() - sent_);
            std::copy_n(frame_.begin() + static_cast<std::ptrdiff_t>(sent_), out.bytes, buffer.begin());
            sent_ += out.bytes;
        }
        return out;
    }

    // It sends by itself; whatever it is asked or told changes nothing.
    Status write(std::span<const std::uint8_t>) override { return Done{}; }
    [[nodiscard]] Time now() const override { return fromSeconds(stage_->now_s()); }
    [[nodiscard]] Time nextDue() const override {
        if (speed_ <= 0 || sent_ < frame_.size()) return Time(0);
        const double due_s = std::min(stage_->rig().nextArrival_s(), stage_->now_s() + kGrain_s);
        return std::max(Time(0), started_ + fromSeconds(due_s / speed_) - clock_());
    }
    [[nodiscard]] std::string name() const override { return "simulated meter"; }

private:
    void next() {
        frame_.clear();
        sent_ = 0;
        double to_s = stage_->now_s() + kGrain_s;
        if (speed_ > 0) to_s = std::min(to_s, toSeconds(clock_() - started_) * speed_);
        std::vector<Reading> readings;
        if (!stage_->advanceToReading(to_s, readings)) return;
        arrived_ = readings.front().time;
        frame_ = encodeFrame(meter_.frame, readings.front(), resolution_V_);
    }

    std::shared_ptr<bench::Stage> stage_;
    MeterDescription meter_;
    double speed_;
    std::function<Time()> clock_;
    double resolution_V_ = 0;
    Time started_{0};
    std::vector<std::uint8_t> frame_;
    std::size_t sent_ = 0;
    Time arrived_{0};
};

} // namespace

Result<SimulatedMeter> simulatedMeter(const BenchScript& script, const Sheet& sheet, const MeterDescription& meter,
                                      std::uint64_t seed, double speed, std::function<Time()> clock) {
    const Result<bench::BenchSetup> setup = prepare(script, sheet);
    if (!setup) return setup.error();
    auto stage = std::make_shared<bench::Stage>(setup.value(), script.habits, sheet, meter.traits, seed);
    SimulatedMeter out;
    out.link = std::make_unique<SimulatedLink>(stage, meter, speed, std::move(clock));
    out.hand = [stage](const Prompt& prompt, Time now) { return stage->hand().obey(prompt, now); };
    out.strike = [stage] { stage->rig().strike(); };
    out.truth = [stage, plan = script.plan] { return stage->truth(plan); };
    return out;
}

} // namespace stillwire
