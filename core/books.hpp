// SPDX-License-Identifier: GPL-3.0-or-later
// What a capture adds up to so far: levels, poses, wear, the machine, and the list of what happened. Reads what is
// settled, in order; copied whole where the unsettled rest is to be counted too.
#pragma once

#include "core/analyse/drive_strip.hpp"
#include "core/analyse/phase_builder.hpp"
#include "core/analyse/plateau_book.hpp"
#include "core/analyse/renewal_watch.hpp"
#include "core/analyse/wear_map.hpp"
#include "core/domain/timeline.hpp"
#include "core/explain/classify.hpp"

#include <optional>
#include <vector>

namespace stillwire {

struct Books final : Explained {
    Books(const Sheet& sheet, const MeterTraits& meter);

    void held(const Reading* first, std::size_t count, int context, const Segment& level, bool anew) override;
    void away(const Reading& reading, int context, const Segment& level) override;
    void moving(const Reading& reading, int context) override;
    void excursion(const Excursion& excursion, bool shoulder) override;
    void moved(const Movement& movement) override;

    // An excursion with its place, step, pose and, as far as can be told at once, its kind.
    [[nodiscard]] Excursion placed(Excursion excursion, bool shoulder) const;
    [[nodiscard]] bool onSignal(int context) const { return timeline.context(context).wire == Wire::signal; }

    double play_V, resolution_V;
    Time aperture;
    Timeline timeline;
    PlateauBook plateaus;
    RenewalWatch renewals;
    WearMap wear;
    std::optional<DriveStrip> drive;
    std::vector<Excursion> excursions;
    std::vector<LevelJump> jumps;
    std::vector<TimeSpan> travels;
    bool begunStirred = false; // the level held was first found in a pose
};

} // namespace stillwire
