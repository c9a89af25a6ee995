// SPDX-License-Identifier: GPL-3.0-or-later
// The inside of an Examination: the stages readings and marks go through, and what they have found so far. Private to
// core.
#pragma once

#include "core/analyse/blind_watch.hpp"
#include "core/analyse/quiet_gate.hpp"
#include "core/analyse/reference_watch.hpp"
#include "core/books.hpp"
#include "core/examination.hpp"
#include "core/judge/coverage.hpp"
#include "core/judge/judgement.hpp"
#include "core/judge/levels.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// The finest grid that the signal is read on.
[[nodiscard]] double resolutionOf(const MeterTraits& meter);

struct Examination::Parts {
    explicit Parts(ExaminationSetup given);

    PushResult push(const Reading& reading);
    void push(const Reading* from, std::size_t count);
    void push(const Mark& mark);
    void look(const Reading& reading); // every stage at it
    [[nodiscard]] QuietTerms quietTerms() const;
    void settle(); // what the gate has kept is handed on
    void pushQuiet(const Reading* from, std::size_t count);
    void readSecondMeter(const Reading& reading);
    void watchVoltage(double volts_V, int at);  // of the context there
    [[nodiscard]] bool connected(int at) const; // the lead is where the step says
    [[nodiscard]] WireState stateNow() const;
    [[nodiscard]] WireState heldAt(Time at) const; // steady, or it has just jumped
    [[nodiscard]] bool onSignal() const { return books.timeline.now().wire == Wire::signal; }
    void placeChanged();

    // Findings, part by part; `b`: the books with what is not settled yet.
    [[nodiscard]] MeterFigures meterFigures() const;
    [[nodiscard]] Case caseOf(const Findings& findings, const Levels& levels, const Tallies& tallies,
                              const Books& b) const;
    void tellReference(Findings& findings, const Books& b) const;
    [[nodiscard]] Findings findings() const;

    ExaminationSetup setup;
    MeterTraits meter, referenceMeter;
    Time aperture;
    BlindWatch blind;
    Books books;
    Classifier classifier;
    Search search;
    Expectation expected; // of the marks in force
    int context = 0;      // their number in the books
    Expectation expectedBefore;
    Time stepFrom{0};
    PlateauBook secondReference;
    BlindWatch referenceBlind; // of the second meter
    ReferenceWatch referenceWatch;
    QuietGate gate;

    std::size_t readings = 0;
    double newest_V = 0;
    Time first{-1}, last{0}; // of all rows
    Time lastReading{0};
    Time lastJump{-1000000000};
    std::size_t jumpsSeen = 0;
    bool hasJumped = false; // by the newest reading
    WireState state = WireState::silent;
    int overReadings = 0;
    bool probedAtController = false; // by a mark
    bool overloadIsOver = false; // the smallest range reaches past over-voltage, so what is over it is over that too
    bool overVoltage = false;
    Time flaggedFrom{-1}; // of the excursion flagged last
};

} // namespace stillwire
