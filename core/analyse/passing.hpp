// SPDX-License-Identifier: GPL-3.0-or-later
// Nothing marked: an excursion that rested elsewhere and is back, if it stays. One that passes its level and goes on
// beyond it was a hand on its way.
#pragma once

#include "core/findings/findings.hpp"

#include <optional>

namespace stillwire {

class Passing {
public:
    enum class Turn { goesOn, cameBack, crossed };

    struct Waiting {
        Excursion excursion;
        bool shoulder = false;
        Time lastHeld{0}; // before it
    };

    void begin(Waiting waiting, double back_V);
    void end() { waiting_.reset(); }
    // A reading, by how far it lies off the level: back for good, beyond it on the other side, or neither yet.
    Turn push(Time time, double volts_V, double held_V, double limit_V);

    [[nodiscard]] const std::optional<Waiting>& waiting() const { return waiting_; }

private:
    std::optional<Waiting> waiting_;
    Time back_{0}; // of late, if it goes on moving
    double back_V_ = 0;
};

} // namespace stillwire
