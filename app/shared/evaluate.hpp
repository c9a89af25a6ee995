// SPDX-License-Identifier: GPL-3.0-or-later
// A capture through the one path, row by row: what `analyse`, `replay` and `report` share with the window.
#pragma once

#include "core/capture/reader.hpp"
#include "core/examination.hpp"

#include <functional>
#include <string>
#include <vector>

namespace stillwire {

struct EvaluationSetup {
    std::string sheet; // as given on the command line; empty: the capture's own
    std::string meter;
    ImportOptions import;
};

struct Evaluation {
    CaptureHeader header;
    ExaminationSetup setup; // what it was judged by
    ReadSummary summary;
    Findings findings;
    std::vector<Excursion> outsideSteps;    // dropouts that no step's verdict counts (outside_steps.hpp)
    std::vector<std::string> fittingSheets; // names, where no level lies in a window of the sheet it was judged by
};

// Who watches the rows go by, each after the examination has taken it. Both may be empty.
struct Watcher {
    std::function<void(const Reading&, const PushResult&, const Examination&)> reading;
    std::function<void(const Mark&, const Examination&)> mark;
};

// Constant memory but for what the examination keeps. Errors: the capture's, the sheet's, the meter's; no sheet at
// all: then it names those that would fit.
[[nodiscard]] Result<Evaluation> evaluateCapture(const std::string& path, const EvaluationSetup& setup,
                                                 const Watcher& watcher = {});

} // namespace stillwire
