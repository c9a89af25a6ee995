// SPDX-License-Identifier: GPL-3.0-or-later
// What the machine would have done with this signal, by the sheet's drive curve.
#pragma once

#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "core/sheet/sheet.hpp"

#include <optional>
#include <vector>

namespace stillwire {

// Drive commanded at `level_V` (nominal): 0 at noneAt_V, 1 at fullAt_V, straight between; either may be the higher.
[[nodiscard]] double driveAt(const Drive& drive, double level_V);

// A stop is the drive cut to none for `debounce_s` or longer while the held level commanded some.
// Sure: an aperture A that averaged x holds at least A·(none - x)/(none - rail) below `none`, were the rest just
// above it and the dip down to the rail. Possible: it holds at most A·(held - x)/(held - none), and the time between
// apertures.
class DriveStrip {
public:
    DriveStrip(const Drive& drive, double nominal_V, double interval_s, std::optional<double> aperture_s);

    void held(const Reading* first, std::size_t count) {
        for (const Reading* r = first; r != first + count; ++r)
            if (r->volts_V < unchangedFrom_V_ || r->volts_V > unchangedTo_V_) point(r->time, r->volts_V);
    }
    void moving(Time time, double volts_V);
    void away(Time time, double volts_V, double held_V);
    void excursionEnded();
    void excursionWithdrawn();
    void levelChanged(double from_V, double to_V); // with nobody moving it: a jump, a hang
    [[nodiscard]] MachineStrip strip() const;

private:
    void point(Time time, double volts_V);

    Drive drive_;
    double rail_V_;
    double interval_s_;
    double surely_s_;                    // aperture assumed where nothing may be overstated
    double possibly_s_;                  // aperture assumed where nothing may be left out
    double sure_s_ = 0, possible_s_ = 0; // of the excursion so far
    bool commanded_ = false;
    double unchangedFrom_V_ = 1, unchangedTo_V_ = 0; // shown volts that need no new point
    MachineStrip strip_;
};

} // namespace stillwire
