// SPDX-License-Identifier: GPL-3.0-or-later
// The steps in which nobody moves anything: hook-up, reference, ground, cold-start, and the end of the run.
#include "core/procedure/activity.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kWireFor_s = 5; // a settled median of a wire, and a moment to see it sag
constexpr int kWireReadings = 8;
constexpr double kColdFor_s = 30; // common practice, no source: 30 to 60 s, hands off
constexpr double kNothing = 0.04; // of the nominal: no wire that is fed reads less
constexpr double kKeyOnFor_s = 3; // steady this long on a live wire: the key is on

class HookUp : public Activity {
public:
    explicit HookUp(bool endsByEvidence) : endsByEvidence_(endsByEvidence) {}
    void begin(const Bench& bench) override { readings_ = bench.findings->readings; }
    void tick(const Bench& bench) override {
        const bool live =
            bench.findings->readings > readings_ && bench.steady() && bench.held_V() > 0.6 * bench.sheet.nominal_V;
        live_.see(live, bench.now);
        if (endsByEvidence_ && live_.for_s(bench.now) >= kKeyOnFor_s) on_ = true;
    }
    void command(Command command, const Bench&) override {
        if (command == Command::next) on_ = true;
    }
    [[nodiscard]] bool done(const Bench&) const override { return on_; }
    void show(Prompt& prompt, const Bench& bench) const override {
        prompt.detail = whatTheLeadReads(bench);
        prompt.progress = on_ ? 1 : 0;
    }

private:
    // Before anything else is blamed: the key, and the lead.
    [[nodiscard]] Sentence whatTheLeadReads(const Bench& bench) const {
        const double held_V = bench.held_V(), nominal_V = bench.sheet.nominal_V;
        if (bench.findings->readings <= readings_ || !bench.steady() || live_.holds())
            return {phrases::kReachTheWire, {}};
        if (held_V < -kNothing * nominal_V) return {phrases::kLeadsSwapped, {volts(held_V)}};
        if (held_V < kNothing * nominal_V) return {phrases::kReadsNothing, {volts(held_V)}};
        return {phrases::kNoReference, {volts(held_V)}};
    }

    bool endsByEvidence_;
    std::size_t readings_ = 0;
    Holding live_;
    bool on_ = false;
};

class WireReading : public Activity {
public:
    explicit WireReading(Step step) : step_(step) {}
    void begin(const Bench& bench) override {
        since_ = bench.now;
        readings_ = bench.findings->readings;
    }
    [[nodiscard]] bool done(const Bench& bench) const override {
        const auto& level = step_ == Step::reference ? bench.findings->reference : bench.findings->ground;
        return level && share(bench) >= 1;
    }
    void show(Prompt& prompt, const Bench& bench) const override {
        prompt.progress = share(bench);
        if (!done(bench)) prompt.wanted = {phrases::kMoreReadings, {}};
    }

private:
    [[nodiscard]] double share(const Bench& bench) const {
        const double byTime = toSeconds(bench.now - since_) / kWireFor_s;
        const double byCount = static_cast<double>(bench.findings->readings - readings_) / kWireReadings;
        return std::min({1.0, byTime, byCount});
    }
    Step step_;
    Time since_{0};
    std::size_t readings_ = 0;
};

class ColdStart : public Activity {
public:
    void begin(const Bench& bench) override {
        since_ = last_ = bench.now;
        bench.mark(PositionMark{bench.sheet.rest().name});
    }
    void tick(const Bench& bench) override {
        // Blind time is no evidence: the rest is watched for as long again.
        const double passed = toSeconds(bench.now - last_);
        if (bench.findings->state != WireState::blind && bench.findings->state != WireState::silent)
            seen_s_ += passed;
        last_ = bench.now;
    }
    [[nodiscard]] bool done(const Bench& bench) const override {
        return seen_s_ >= kColdFor_s && bench.visitSince(bench.sheet.rest().name, since_) != nullptr;
    }
    void show(Prompt& prompt, const Bench&) const override {
        prompt.progress = std::min(1.0, seen_s_ / kColdFor_s);
        const int left = static_cast<int>(std::ceil(kColdFor_s - seen_s_));
        prompt.wanted = left > 0 ? phrases::kSeconds(left) : Sentence{phrases::kMoreReadings, {}};
    }

private:
    Time since_{0}, last_{0};
    double seen_s_ = 0;
};

// Key off is a claim about the machine: the person's word for it, or the wire's own (a live signal fallen to 0).
class PutBack : public Activity {
public:
    void begin(const Bench& bench) override { before_V_ = bench.held_V(); }
    void tick(const Bench& bench) override {
        const double dead_V = 0.02 * bench.sheet.nominal_V;
        dead_.see(before_V_ > 5 * dead_V && bench.steady() && std::abs(bench.held_V()) < dead_V, bench.now);
        if (!off_ && dead_.for_s(bench.now) >= kKeyOnFor_s) turnOff(bench);
        if (off_ && toSeconds(bench.now - offSince_) >= kReadFor_s) done_ = true;
    }
    void command(Command command, const Bench& bench) override {
        if (command != Command::next) return;
        if (off_)
            done_ = true;
        else
            turnOff(bench);
    }
    [[nodiscard]] bool done(const Bench&) const override { return done_; }
    void show(Prompt& prompt, const Bench&) const override {
        prompt.instruction = {off_ ? phrases::kAfterKeyOff : phrases::kKeyOff, {}};
        prompt.progress = off_ ? 0.5 : 0;
    }

private:
    void turnOff(const Bench& bench) {
        off_ = true;
        offSince_ = bench.now;
        bench.mark(KeyMark{false});
    }
    static constexpr double kReadFor_s = 30; // to read the last sentence, hands full
    double before_V_ = 0;
    Holding dead_;
    bool off_ = false, done_ = false;
    Time offSince_{0};
};

} // namespace

std::unique_ptr<Activity> makeHookUp(bool endsByEvidence) { return std::make_unique<HookUp>(endsByEvidence); }
std::unique_ptr<Activity> makeWireReading(Step step) { return std::make_unique<WireReading>(step); }
std::unique_ptr<Activity> makeColdStart() { return std::make_unique<ColdStart>(); }
std::unique_ptr<Activity> makePutBack() { return std::make_unique<PutBack>(); }

} // namespace stillwire
