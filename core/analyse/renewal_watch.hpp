// SPDX-License-Identifier: GPL-3.0-or-later
// Dips inside a dip: a signal that was on its way back to its level and leaves it further again shows something new,
// though it was never quite back. A display filter needs seconds to come back, a hand goes on wiggling meanwhile.
#pragma once

#include "core/base/time.hpp"

#include <vector>

namespace stillwire {

class RenewalWatch {
public:
    // A reading off its level. `began`: of its aperture; offset: reading less level.
    void away(Time began, double offset_V, double threshold_V);
    void back() { inside_ = false; }
    // When such a renewal showed; an excursion's own beginning is none.
    [[nodiscard]] const std::vector<Time>& all() const { return renewals_; }

private:
    bool inside_ = false;
    bool up_ = false;
    double deepest_V_ = 0; // since the dip, or its newest renewal, began
    double nearest_V_ = 0; // to the level, since then
    std::vector<Time> renewals_;
};

} // namespace stillwire
