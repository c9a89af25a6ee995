// SPDX-License-Identifier: GPL-3.0-or-later
// What goes on inside one step. The procedure owns the order of the steps; an activity owns the evidence of one.
#pragma once

#include "core/procedure/pace.hpp"
#include "core/procedure/procedure.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

// What every activity may look at, and where its marks go.
struct Bench {
    const Sheet& sheet;
    const MeterTraits& meter;
    Pace& pace;
    Time keyOn{0}; // when the key was turned on, or the run began
    Time now{0};
    const Findings* findings = nullptr;
    std::vector<Mark>* marks = nullptr;

    void mark(MarkContent content) const { marks->push_back({now, std::move(content)}); }
    [[nodiscard]] double interval_s() const;
    [[nodiscard]] bool steady() const { return findings->state == WireState::steady; }
    [[nodiscard]] double held_V() const { return findings->meter.held_V; }
    [[nodiscard]] const PositionLevel* position(const std::string& name) const; // null before it is measured
    [[nodiscard]] const StepCoverage* coverage(Step step) const;                // null before a pose was looked at
    // The last settled stay at `name` that began at or after `since`; null if there is none yet.
    [[nodiscard]] const Visit* visitSince(const std::string& name, Time since) const;
};

// Seconds a condition has held without a break.
class Holding {
public:
    void see(bool holds, Time now) {
        if (!holds)
            since_.reset();
        else if (!since_)
            since_ = now;
    }
    [[nodiscard]] bool holds() const { return since_.has_value(); }
    [[nodiscard]] double for_s(Time now) const { return since_ ? toSeconds(now - *since_) : 0; }

private:
    std::optional<Time> since_;
};

class Activity {
public:
    virtual ~Activity() = default;
    virtual void begin(const Bench& bench) = 0;
    virtual void tick(const Bench&) {}
    virtual void command(Command, const Bench&) {}                 // next and what is the activity's own
    [[nodiscard]] virtual bool done(const Bench& bench) const = 0; // the evidence is in
    virtual void show(Prompt& prompt, const Bench& bench) const = 0;
};

// The activity of a step; never null.
[[nodiscard]] std::unique_ptr<Activity> makeActivity(const PathEntry& entry, const ProcedureOptions& options);

// One maker per file; makeActivity chooses.
[[nodiscard]] std::unique_ptr<Activity> makeHookUp(bool endsByEvidence);
[[nodiscard]] std::unique_ptr<Activity> makeWireReading(Step step);
[[nodiscard]] std::unique_ptr<Activity> makeColdStart();
[[nodiscard]] std::unique_ptr<Activity> makePoses(Step step, int sections, bool armHeld); // of the harness
[[nodiscard]] std::unique_ptr<Activity> makeVisits(Step step);
[[nodiscard]] std::unique_ptr<Activity> makeSweep();
[[nodiscard]] std::unique_ptr<Activity> makeLift(bool endsByEvidence);
[[nodiscard]] std::unique_ptr<Activity> makeAdjust();
[[nodiscard]] std::unique_ptr<Activity> makePutBack();

} // namespace stillwire
