// SPDX-License-Identifier: GPL-3.0-or-later
// Tells a meter whose number stands still from a wire that is quiet, by how restless this meter's numbers are at
// rest.
#pragma once

#include "core/base/time.hpp"

#include <optional>

namespace stillwire {

// Two successive readings at rest are equal with chance q, counted as the capture goes on; a run of equal readings is
// a frozen meter when q would make one in a million such runs. A level on its way says nothing of how restless the
// meter is at rest, so only a change that turns back counts as one: noise does at two readings in three
// (turning-point test, Bienaymé 1874), a shaft that moves does not. That makes q too large, and a meter is called
// frozen later, not sooner.
class FrozenWatch {
public:
    struct Span {
        Time from{0}, to{0};
    };
    // A reading that is a number; the frozen stretch that it has ended, if it has.
    std::optional<Span> push(Time time, double volts_V) {
        // Whether two readings are equal is anybody's guess, a processor's too: no branch on it while the run is
        // short.
        const int up = volts_V > last_V_ ? 1 : 0;
        const int changed = up | (volts_V < last_V_ ? 1 : 0);
        last_V_ = volts_V;
        std::optional<Span> ended;
        if (run_ >= kLeastRun - 1 || run_ == 0) ended = pushLong(time, changed != 0);
        turns_ += changed & (up ^ up_);
        equalPairs_ += 1 - changed;
        up_ = changed != 0 ? up : up_;
        from_ = changed != 0 ? time : from_;
        run_ = changed != 0 ? 1 : run_ + 1;
        return ended;
    }
    [[nodiscard]] bool frozen() const { return frozen_; }
    [[nodiscard]] Time from() const { return from_; }

private:
    static constexpr int kLeastRun = 8;

    std::optional<Span> pushLong(Time time, bool changed);
    [[nodiscard]] bool standsStill() const; // with one more

    double last_V_ = 0;
    Time from_{0};                    // of the run of equal readings
    int run_ = 0;                     // how many
    int up_ = 0;                      // the newest change went up
    long turns_ = 0, equalPairs_ = 0; // at rest
    bool frozen_ = false;
};

} // namespace stillwire
