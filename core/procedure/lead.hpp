// SPDX-License-Identifier: GPL-3.0-or-later
// The red lead on its way from one wire to the next, and how the bench knows that it has arrived.
#pragma once

#include "core/procedure/activity.hpp"

namespace stillwire {

class LeadMove {
public:
    void begin(Wire wanted, const Bench& bench);
    // Steady at a level that only the wanted wire, and not a lead in the air, would show. A ground of exactly nothing
    // cannot be told from a lead in the air: then the person says so.
    [[nodiscard]] bool arrived(const Bench& bench);
    void show(Prompt& prompt) const;

private:
    Wire wanted_ = Wire::none;
    double left_V_ = 0; // what the meter showed on the wire the lead comes from
    std::size_t readings_ = 0;
    Holding there_;
};

} // namespace stillwire
