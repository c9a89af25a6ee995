// SPDX-License-Identifier: GPL-3.0-or-later
// The loop of a guided run: bytes, decoder, examination, procedure, hand.
#include "tests/meters/bench/guided.hpp"

#include "core/examination.hpp"
#include "meters/bench/simulated_meter.hpp"
#include "meters/decode/decoder.hpp"

#include <array>
#include <memory>
#include <stdexcept>
#include <utility>

namespace stillwire::test {
namespace {

constexpr double kLongest_s = 1800;
constexpr double kWarmPatience_s = 30; // the ten minutes of a real run would be nothing but waiting

BenchScript scriptOf(const GuidedOptions& options) {
    if (options.script) return *options.script;
    BenchScript script = benchScript(options.fault, options.meter);
    script.habits.warmPatience_s = kWarmPatience_s;
    return script;
}

Prompt withoutWords(Prompt prompt) {
    prompt.title = prompt.instruction = prompt.detail = prompt.why = prompt.wanted = prompt.pose = {};
    prompt.cautions.clear();
    for (Choice& choice : prompt.choices) choice.says = {};
    return prompt;
}

ExaminationSetup examinationOf(const BenchScript& script, const Sheet& sheet, const MeterTraits& meter) {
    const Result<bench::BenchSetup> bench = prepare(script, sheet);
    if (!bench) throw std::logic_error(bench.error().text());
    ExaminationSetup out;
    out.sheet = sheet;
    out.meter = meter;
    out.probe = bench.value().side;
    out.sections = usualSections();
    return out;
}

SimulatedMeter meterOf(const BenchScript& script, const Sheet& sheet, const MeterDescription& meter,
                       std::uint64_t seed) {
    Result<SimulatedMeter> made = simulatedMeter(script, sheet, meter, seed, 0, nullptr);
    if (!made) throw std::logic_error(made.error().text());
    return std::move(made.value());
}

class Run {
public:
    explicit Run(const GuidedOptions& options)
        : options_(options), script_(scriptOf(options)), meter_(describedMeter(options.meter, FrameKind::text)),
          simulated_(meterOf(script_, options.sheet, meter_, options.seed)), decoder_(makeDecoder(meter_)),
          examination_(examinationOf(script_, options.sheet, meter_.traits)),
          procedure_(options.sheet, meter_.traits, {.seed = options.seed}) {}

    Guided toTheEnd() {
        (void)simulated_.link->open();
        take(procedure_.start(now()));
        while (!procedure_.prompt().finished && toSeconds(now()) < kLongest_s) step();
        out_.finished = procedure_.prompt().finished;
        (void)findings();
        out_.truth = simulated_.truth();
        return std::move(out_);
    }

private:
    [[nodiscard]] Time now() const { return simulated_.link->now(); }

    void step() {
        read();
        take(procedure_.tick(now(), findings()));
        const Prompt& prompt = procedure_.prompt();
        if (prompt.aim_V) {
            out_.aim_V = prompt.aim_V;
            out_.aimWithin_V = prompt.aimWithin_V;
            out_.shown_V = out_.readings.back().volts_V;
        }
        const auto commands = simulated_.hand(options_.words == Words::kept ? prompt : withoutWords(prompt), now());
        for (const Command command : commands) take(procedure_.command(command, now(), findings()));
    }

    void read() {
        std::array<std::uint8_t, 256> buffer{};
        const LinkEvent event = simulated_.link->read(buffer);
        std::vector<Reading> readings;
        decoder_->push(std::span(buffer).first(event.bytes), event.arrived, readings);
        for (const Reading& reading : readings) {
            examination_.push(reading);
            out_.readings.push_back(reading);
            stale_ = true;
        }
    }

    void take(const std::vector<Mark>& marks) {
        for (const Mark& mark : marks) {
            examination_.push(mark);
            out_.marks.push_back(mark);
            stale_ = true;
        }
    }

    // Judging is what a run costs, and says the same until something goes in.
    const Findings& findings() {
        if (!stale_) return out_.findings;
        out_.findings = examination_.findings();
        stale_ = false;
        if (options_.judged) options_.judged(now(), out_.findings);
        return out_.findings;
    }

    const GuidedOptions& options_;
    BenchScript script_;
    MeterDescription meter_;
    SimulatedMeter simulated_;
    std::unique_ptr<Decoder> decoder_;
    Examination examination_;
    Procedure procedure_;
    Guided out_;
    bool stale_ = true;
};

} // namespace

Guided guide(const GuidedOptions& options) { return Run(options).toTheEnd(); }

MeterDescription describedMeter(MeterKind kind, FrameKind frame) {
    MeterDescription out;
    out.traits = meterTraits(kind);
    out.frame.kind = frame;
    return out;
}

} // namespace stillwire::test
