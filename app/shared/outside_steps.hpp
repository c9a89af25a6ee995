// SPDX-License-Identifier: GPL-3.0-or-later
// What a partly marked capture holds beside its steps. There the lead may have been anywhere, so the verdict does not
// count it; but a file of which only a part was marked must not keep a dropout to itself.
#pragma once

#include "core/capture/reader.hpp"
#include "core/examination.hpp"

#include <string>
#include <vector>

namespace stillwire {

struct Stretch {
    Time from{0}, to{0};
};

// Where no step was open, from the marks as they go by.
class OutsideSteps {
public:
    void mark(const Mark& mark);
    // Nothing if there was no step, or if so little lies outside that it is the lead on its way from wire to wire.
    [[nodiscard]] std::vector<Stretch> stretches(Time duration) const;

private:
    std::vector<Stretch> closed_;
    Time since_{0};
    bool open_ = true, any_ = false;
};

// The dropouts there, found as in a file without marks: reads it once more.
[[nodiscard]] std::vector<Excursion> dropoutsOutside(const std::string& path, const ImportOptions& import,
                                                     const ExaminationSetup& setup,
                                                     const std::vector<Stretch>& stretches);

} // namespace stillwire
