// SPDX-License-Identifier: GPL-3.0-or-later
// Every figure of the explaining, in one place, passed in. Costs are minus the natural logarithm of a rate or a
// chance: 1.0 is one in 2.7, 5.0 one in 150. Own rules unless a source stands beside them; how far the results move
// when each is halved and doubled is printed by tests/core/explain/sensitivity.cpp.
#pragma once

namespace stillwire {

struct Tuning {
    // What is off a level: more than the largest of these. A depth of the design's 0.02 V shows a tenth smaller where
    // the level itself is off by its drift and half a count.
    struct Reach {
        double least_V = 0.0194;
        double noises = 6;
        double counts = 3;
        double back = 0.8; // of it: within this an excursion has come back (hysteresis as of IEC 61000-4-30: a fifth)
        double quietNoises = 3;   // a reading of an untouched wire lies within so many
        double quietCounts = 1.5; // or so many counts
        double told_V = 0.02;     // what is told as the threshold: max(this, noises, counts)
    } reach;

    // The level that is held, and its noise.
    struct Held {
        double follows_s = 2.5;       // time constant: warm-up of 0.08 V over minutes is followed within 0.004 V
        double stirredFollows = 0.05; // of that speed where somebody shakes it: a lean is not the level
        int few = 8;                  // readings up to which the level is their mean
        int known = 16;               // readings from which its own noise counts alone
        int refresh = 16;             // readings between two looks at it, once it is known
        double refresh_s = 2.5;       // or this long
        int remembers = 48;           // readings that its noise is taken from
        double unknownCounts = 1;     // noise of a meter before anything is known of it
        double teaches = 2;           // a hold noisier than so many times the expected teaches nothing of the meter
        int looks = 20;               // that the expected noise is the mean of
        double surprise = 4.5;        // the most that one reading within reach may cost: 3 standard deviations
        double young = 3;             // while its own noise is not known yet
        double lean = 0.5;            // and where somebody shakes it: a shift within reach is the arm's
        double louder = 3;            // and the most it is taken for, where that is more than a hand's
        double noisy =
            0.45; // of ln(its own noise / the expected): what that costs at each reading. All of it would be
                  // due beside readings that may lie anywhere at ln(5 V / 7 mV); those cost `unforeseen`
    } held;

    // A hand or foot that holds it trembles. From memory: 5 to 40 mV on a pedal of 3.5 V travel.
    struct Hand {
        double least_V = 0.006, most_V = 0.04; // what is louder is no hand
        double share = 0.5;                    // of the reading that shows it first
        double held_V = 0.025;                 // where somebody is asked to hold it
        double begins = 3;                     // as it arrives
        double unknown = 7;                    // before anything is known of the meter: it may be its noise
        double creeps = 9;                     // or away from it, by no leap
        double later = 14;                     // at a level that was still so far
    } hand;

    // A reading that an explanation could not foresee: the same price for all.
    double unforeseen = 3;
    double foreseen =
        1.6; // on its line, within 6 noises of where it was due: ln(12 / sqrt(2 pi)), against a level's own noise

    // Away from a level and back to it.
    struct Away {
        double begins = 1.0;
        double young = 7;   // more where the level has hardly been seen: over its readings, and until
        double young_s = 2; // so old
        double perSecond = 0.6;
        double flat = 0.1;          // a reading where the one before was, beside what one at a level would cost
        double comesBack = 0.1;     // nearer by so much of its distance in a reading: on its way back
        double perSecondRail = 0.1; // at a rail nothing else is likely
        double railShare = 0.02;    // of the nominal, from 0 or from the reference: at the rail
        double settlesElsewhere =
            10; // a dropout in which the shaft was moved, beside the movement: rather a pause on its way
        double dropoutGoesOn = 3; // from a rail, or where a movement is due, that is no pause
        double flat_s = 2;        // unmarked, flat and off a rail for longer: a movement (design, point 1)
        double flatIntervals = 5; // and so many intervals
        double flatSlack = 1.05;  // times that, for stamps jitter
        double stillFlat_s = 8;   // where nobody asked for a movement: poses are shorter than this
        int stillFlatReadings = 8;
        int movingFlatReadings = 5; // in a step about moving
    } away;

    // Moving.
    struct Moving {
        double begins = 5;   // nobody said what is done here
        double unasked = 12; // a step asked to hold
        double inStep = 3;   // a step about moving
        double asked = 0.5;  // a mark asked for it
        double ignored = 5;  // one that was asked for never came
        double awaited = 6;  // to be away, beside what it costs, while one that was asked for has not come
        double perSecond = 0.5;
        double pausedPerSecond = 3; // standing still is no movement for long
        double paused = 0.6;        // of a reach in a second, or less: standing still
        double turns = 2.5;         // turns back against its direction
        double settles = 0.7;
        double returns = 3.5; // V, span / (2 reaches) e-fold
        double atRail = 25;   // settles at a rail
        double patience_s =
            10;             // so long a movement that was asked for is awaited, and longer while no level is known
        double early_s = 3; // a hand that moved so long before its mark was early
        double grace_s = 3; // or corrects itself for so long after it
        double leadGrace_s = 6; // a lead that goes to another wire, over none
    } moving;

    // The line that a movement follows, and away from it and back.
    struct Line {
        double uneven = 0.1;   // of a hand's step from reading to reading: standard deviation about its line
        double young = 1;      // by so many readings' worth wider while that is not known yet
        double prior = 2;      // readings that this is worth
        double remembers = 16; // readings that its own unevenness is taken from
        int memory = 12;       // and the line itself
        double onLine = 0.7;   // a reading on it, beside how far off it is
        double begins = 1.0;   // to be off it
        int even = 4;          // readings from which that can be told
        double faster = 1.5;   // a hand may have gone on so much faster meanwhile
        double longest_s = 8;  // longer is somewhere else
    } line;

    struct Search {
        int survivors = 16;
        double alike = 0.35; // of a reach: levels that near are one
        double margin = 16;  // a dearer explanation is given up
        double lag_s = 25;   // what is older is settled by the cheapest
        int lagReadings = 400;
        double freshGap = 2; // intervals: the most that passes between two readings, as far as costs go
    } search;
};

} // namespace stillwire
