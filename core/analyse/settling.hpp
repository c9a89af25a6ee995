// SPDX-License-Identifier: GPL-3.0-or-later
// The first readings at a level: a shaft that has just arrived swings about it, a meter's display filter still creeps
// towards it.
#pragma once

#include <algorithm>
#include <cmath>

namespace stillwire {

class Settling {
public:
    static constexpr int kEstablished = 10; // readings of a level before it is the level of a wire just probed

    void arrived(double left_V, double level_V) {
        move_V_ = level_V - left_V;
        readings_ = 0;
    }
    void nowhere() { // it had not moved after all
        move_V_ = 0;
        readings_ = 0;
    }
    void cameBack() { move_V_ = 0; }
    void count(int readings) { readings_ = std::min(kEstablished, readings_ + readings); }

    [[nodiscard]] bool established() const { return readings_ >= kEstablished; }
    // The first reading may have been the movement's last.
    [[nodiscard]] bool swings(double offset_V) const {
        return readings_ <= kSwings && std::abs(offset_V) < kSwingShare * std::abs(move_V_);
    }
    // Goes on in the movement's direction, a little.
    [[nodiscard]] bool creeps(double offset_V, double limit_V) const {
        return readings_ <= kCreeps && offset_V * move_V_ > 0 && std::abs(offset_V) < kCreepLimits * limit_V;
    }

private:
    static constexpr int kSwings = 4;           // readings
    static constexpr double kSwingShare = 0.02; // of the way it came
    static constexpr int kCreeps = 8;           // readings
    static constexpr double kCreepLimits = 5;

    double move_V_ = 0; // the movement that ended in this level, signed; 0: none
    int readings_ = 0;  // since
};

} // namespace stillwire
