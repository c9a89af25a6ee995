// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/outside_steps.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr double kLeastShare = 0.2;                      // of the capture
constexpr Time kLeastStretch = std::chrono::seconds(30); // longer than a lead is on its way

struct Unmarked : RowSink {
    explicit Unmarked(const ExaminationSetup& setup) : examination(setup) {}
    void reading(const Reading& one) override { examination.push(one); }
    void readings(const Reading* first, std::size_t count) override { examination.push(first, count); }
    void mark(const Mark&) override {}
    Examination examination;
};

} // namespace

void OutsideSteps::mark(const Mark& mark) {
    if (mark.as<StepMark>()) {
        any_ = true;
        if (open_) closed_.push_back({since_, mark.time});
        open_ = false;
    } else if (mark.as<StepEndMark>() && !open_) {
        open_ = true;
        since_ = mark.time;
    }
}

std::vector<Stretch> OutsideSteps::stretches(Time duration) const {
    std::vector<Stretch> out = closed_;
    if (open_) out.push_back({since_, duration});
    std::erase_if(out, [](const Stretch& s) { return s.to - s.from < kLeastStretch; });
    Time sum{0};
    for (const Stretch& one : out) sum += one.to - one.from;
    const bool much = toSeconds(sum) >= kLeastShare * toSeconds(duration);
    return any_ && much ? out : std::vector<Stretch>();
}

std::vector<Excursion> dropoutsOutside(const std::string& path, const ImportOptions& import,
                                       const ExaminationSetup& setup, const std::vector<Stretch>& stretches) {
    Unmarked unmarked(setup);
    if (!readCapture(path, unmarked, import)) return {};
    std::vector<Excursion> out;
    for (const Excursion& e : unmarked.examination.findings().excursions)
        if (e.kind == ExcursionKind::dropout &&
            std::any_of(stretches.begin(), stretches.end(),
                        [&](const Stretch& s) { return s.from <= e.from && e.to <= s.to; }))
            out.push_back(e);
    return out;
}

} // namespace stillwire
