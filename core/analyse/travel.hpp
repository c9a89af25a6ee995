// SPDX-License-Identifier: GPL-3.0-or-later
// Where the positions were seen to lie, shown volts; the middles of their windows where they were not.
#pragma once

#include "core/analyse/aside.hpp"

#include <optional>
#include <vector>

namespace stillwire {

class Travel {
public:
    explicit Travel(const AsideEvidence& evidence);

    // The position that these volts are those of; none that was not measured.
    [[nodiscard]] std::optional<std::size_t> at(double volts_V) const;
    // From one level towards another position's, and not much beyond the last.
    [[nodiscard]] bool along(double from_V, double to_V) const;
    [[nodiscard]] bool rests(double volts_V) const;

private:
    [[nodiscard]] double near_V() const;

    const AsideEvidence* evidence_;
    std::vector<double> levels_;
    std::vector<bool> measured_;
};

} // namespace stillwire
