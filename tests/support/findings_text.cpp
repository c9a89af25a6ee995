// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/findings_text.hpp"

#include <cstdio>

namespace stillwire::test {
namespace {

class Text {
public:
    Text& operator<<(const char* word) { return put(word); }
    Text& operator<<(const std::string& word) { return put(word); }
    Text& operator<<(double value) {
        char digits[32];
        std::snprintf(digits, sizeof digits, "%.17g", value);
        return put(digits);
    }
    Text& operator<<(int value) { return put(std::to_string(value)); }
    Text& operator<<(bool value) { return put(value ? "yes" : "no"); }
    Text& operator<<(std::size_t value) { return put(std::to_string(value)); }
    Text& operator<<(Time time) { return put(std::to_string(time.count())); }
    Text& operator<<(const Sentence& sentence) { return put(sentence.english()); }
    Text& operator<<(Step step) { return put(std::string(stepName(step))); }
    template <class T> Text& operator<<(const std::optional<T>& value) {
        return value ? *this << *value : put("none");
    }
    void line() { text_ += '\n'; }
    [[nodiscard]] std::string take() { return std::move(text_); }

private:
    Text& put(const std::string& word) {
        text_ += word;
        text_ += ' ';
        return *this;
    }
    std::string text_;
};

void put(Text& t, const char* name, const std::vector<Sentence>& sentences) {
    for (const Sentence& sentence : sentences) (t << name << sentence).line();
}

void put(Text& t, const WireLevel& wire) {
    (t << wire.level_V << wire.u_V << wire.lowest_V << wire.highest_V << wire.visits << wire.change_V
       << wire.probabilityInside << static_cast<int>(wire.conformance))
        .line();
}

void put(Text& t, const StepCoverage& step) {
    (t << "step" << step.step << step.poses << step.blindPoses << step.dropouts << step.rateUpper95 << step.posesFor95
       << step.shortestVisible_s << step.jumps)
        .line();
}

void put(Text& t, const std::vector<PositionLevel>& positions) {
    for (const PositionLevel& p : positions) {
        t << "position" << p.name << p.window_V.min_V << p.window_V.max_V << p.level_V << p.raw_V << p.u_V
          << p.probabilityInside << p.coldLevel_V << p.spread_V;
        (t << (p.conformance ? static_cast<int>(*p.conformance) : -1)).line();
        for (const Visit& v : p.visits)
            (t << "visit" << v.from << v.to << v.raw_V << v.level_V << v.u_V << v.readings << v.hang << v.step)
                .line();
    }
}

void put(Text& t, const AdjustmentAdvice& a) {
    t << "adjustment" << a.wanted << a.feasible << a.shift_V << a.margin << a.voltsPerTurn_V << a.uVoltsPerTurn_V
      << a.turns;
    for (const auto* map : {&a.targetRaw_V, &a.after_V, &a.share})
        for (const auto& [name, value] : *map) t << name << value;
    t.line();
}

void put(Text& t, const Verdict& verdict) {
    (t << "verdict" << decisionName(verdict.decision)).line();
    put(t, "reason", wordsOf(verdict.reasons));
    for (const Cause& c : verdict.causes) (t << "cause" << decisionName(c.decision) << c.says << c.nextTest).line();
    put(t, "not-tested", wordsOf(verdict.notTested));
    put(t, "next", wordsOf(verdict.next));
}

} // namespace

std::string findingsText(const Findings& f) {
    Text t;
    (t << f.readings << f.duration << f.meter.interval_s << f.meter.aperture_s << f.meter.resolution_V
       << f.meter.held_V << f.meter.noise_V << f.meter.threshold_V << static_cast<int>(f.state) << f.overVoltage)
        .line();
    put(t, "assumed", f.assumed);
    for (const BlindSpan& b : f.blind) (t << "blind" << b.from << b.to << static_cast<int>(b.cause)).line();
    for (const BlindSpan& b : f.referenceBlind)
        (t << "reference-blind" << b.from << b.to << static_cast<int>(b.cause)).line();
    for (const Phase& p : f.phases)
        (t << "phase" << static_cast<int>(p.kind) << p.from << p.to << p.level_V << p.noise_V).line();
    for (const Excursion& e : f.excursions)
        (t << "excursion" << e.from << e.to << e.held_V << e.extreme_V << e.threshold_V << e.play_V
           << static_cast<int>(e.direction) << static_cast<int>(e.kind) << e.readings << e.open << e.unmarked
           << e.step << e.pose.text() << e.poseIndex)
            .line();
    for (const LevelJump& j : f.jumps) (t << "jump" << j.at << j.from_V << j.to_V << j.step << j.poseIndex).line();
    put(t, f.positions);
    if (f.reference) put(t << "reference", *f.reference);
    if (f.ground) put(t << "ground", *f.ground);
    for (const StepCoverage& step : f.steps) put(t, step);
    put(t, f.wiggle);
    put(t, f.adjustment);
    t << "machine" << f.machine.stops << f.machine.stopsPossible;
    for (const MachineStrip::Point& p : f.machine.points) t << p.time << p.drive;
    t.line();
    for (const WearBin& bin : f.wear)
        (t << "wear" << bin.from << bin.to << bin.time_s << bin.dropouts << bin.noise_V).line();
    if (f.coldWarm)
        (t << "cold-warm" << f.coldWarm->coldPoses << f.coldWarm->coldDropouts << f.coldWarm->warmPoses
           << f.coldWarm->warmDropouts << f.coldWarm->p << f.coldWarm->significant)
            .line();
    put(t, f.verdict);
    return t.take();
}

} // namespace stillwire::test
