// SPDX-License-Identifier: GPL-3.0-or-later
// The one path: readings and marks go in, findings come out. Live, replay, import and `analyse` all use this object,
// so equal rows give equal findings to the last digit. Deterministic; not thread-safe; memory grows with events, not
// readings.
#pragma once

#include "core/capture/header.hpp"
#include "core/capture/mark.hpp"
#include "core/capture/reading.hpp"
#include "core/explain/tuning.hpp"
#include "core/findings/findings.hpp"

#include <memory>

namespace stillwire {

struct ExaminationSetup {
    Sheet sheet;
    MeterTraits
        meter; // interval_s == 0 or no ranges: unknown; call learnMeter() first, or they are taken as 0.33 s, 1 mV
    bool meterKnown = true; // false: accuracy 1 % + 5 counts is assumed, and said
    ProbeSide probe = ProbeSide::sensorSide;
    BlackLead black = BlackLead::batteryNegative;
    std::optional<MeterTraits> referenceMeter{}; // of the readings flagged `ref`; absent: one like `meter`
    Tuning tuning{};                             // another than this only to see how much hangs on a figure
};

// What an Examination says at once, by the very reading that shows it.
struct PushResult {
    bool dropoutFlagged = false; // this reading opened an excursion
    Direction direction = Direction::down;
    bool jumped = false;
    WireState state = WireState::silent;
};

class Examination {
public:
    explicit Examination(ExaminationSetup setup);
    Examination(Examination&&) noexcept;
    Examination& operator=(Examination&&) noexcept;
    ~Examination();

    PushResult push(const Reading& reading); // times never decrease
    // Readings that follow each other with no mark between: as one by one, but quicker where nothing happens.
    void push(const Reading* first, std::size_t count);
    void push(const Mark& mark);

    // Everything so far, judged. Costs in proportion to events (steps, poses, visits, dropouts), not readings.
    [[nodiscard]] Findings findings() const;

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

// Interval and resolution from a sample of readings, for a trace whose meter nobody described.
[[nodiscard]] MeterTraits learnMeter(const std::vector<Reading>& sample);

} // namespace stillwire
