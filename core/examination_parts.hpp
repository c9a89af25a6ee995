// SPDX-License-Identifier: GPL-3.0-or-later
// The inside of an Examination: the stages readings and marks go through, and what they have found so far. Private to
// core.
#pragma once

#include "core/analyse/blind_watch.hpp"
#include "core/analyse/drive_strip.hpp"
#include "core/analyse/level_follower.hpp"
#include "core/analyse/phase_builder.hpp"
#include "core/analyse/plateau_book.hpp"
#include "core/analyse/quiet_gate.hpp"
#include "core/analyse/reference_watch.hpp"
#include "core/analyse/renewal_watch.hpp"
#include "core/analyse/wear_map.hpp"
#include "core/domain/timeline.hpp"
#include "core/examination.hpp"
#include "core/judge/coverage.hpp"
#include "core/judge/judgement.hpp"
#include "core/judge/levels.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// The finest grid that the signal is read on.
[[nodiscard]] double resolutionOf(const MeterTraits& meter);

struct Examination::Parts final : LevelFollowerListener {
    explicit Parts(ExaminationSetup given);

    PushResult push(const Reading& reading);
    void push(const Reading* from, std::size_t count);
    void push(const Mark& mark);
    void look(const Reading& reading); // every stage at it
    [[nodiscard]] QuietTerms quietTerms() const;
    void settle(); // what the gate has kept is handed on
    void pushQuiet(const Reading* from, std::size_t count);
    void readSecondMeter(const Reading& reading);
    void watchVoltage(double volts_V);
    [[nodiscard]] WireState stateOf(ReadingClass seen, Time at) const;
    void place(Excursion excursion, bool shoulder);
    [[nodiscard]] PushResult pushResult() const { return {flagged, flaggedDirection, hasJumped, state}; }
    [[nodiscard]] bool onSignal() const { return timeline.now().wire == Wire::signal; }

    // LevelFollowerListener
    void excursionFlagged(Time at, Direction direction) override;
    void excursionEnded(const Excursion& excursion, bool shoulder) override;
    void excursionWithdrawn() override;
    void jumped(const LevelJump& jump) override;
    void travelled(Time from, Time to) override;
    void travelWithdrawn(Time from) override;
    void held(const Reading* from, std::size_t count, bool settledAnew) override;
    void foundOffSweep(const Excursion& excursion) override;

    // Findings, part by part.
    [[nodiscard]] MeterFigures meterFigures() const;
    [[nodiscard]] Excursion told(Excursion excursion, bool shoulder) const;
    [[nodiscard]] Case caseOf(const Findings& findings, const Levels& levels, const CoverageEvidence& coverage) const;
    void tellReference(Findings& findings) const;
    [[nodiscard]] Findings findings() const;

    ExaminationSetup setup;
    MeterTraits meter, referenceMeter;
    Time aperture, referenceAperture;
    Timeline timeline;
    BlindWatch blind;
    LevelFollower follower;
    const LevelTracker& tracker; // the follower's
    PlateauBook plateaus;
    PlateauBook secondReference;
    BlindWatch referenceBlind; // of the second meter
    ReferenceWatch referenceWatch;
    RenewalWatch renewals;
    WearMap wear;
    std::optional<DriveStrip> drive;
    QuietGate gate;

    std::vector<Excursion> excursions;
    std::vector<LevelJump> jumps;
    std::vector<TimeSpan> travels;
    std::size_t readings = 0;
    double newest_V = 0;
    Time first{-1}, last{0}; // of all rows
    Time lastReading{0};
    Time lastJump{-1000000000};
    WireState state = WireState::silent;
    int overReadings = 0;
    bool probedAtController = false; // by a mark
    bool overloadIsOver = false;     // the smallest range reaches past 5.5 V, so what is over it is over that too
    bool overVoltage = false;
    // What the reading being pushed has shown; pushResult() packs it. Kept apart, for a struct written in pieces and
    // read whole stalls the processor at every reading.
    bool flagged = false, hasJumped = false;
    Direction flaggedDirection = Direction::down;
};

} // namespace stillwire
