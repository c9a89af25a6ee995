// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/evaluate.hpp"

#include "app/shared/fitting_sheets.hpp"
#include "app/shared/outside_steps.hpp"
#include "app/shared/resources.hpp"

#include <algorithm>
#include <filesystem>
#include <optional>

namespace stillwire {

namespace {

// Takes the rows; those before the meter is known wait.
class Feed : public RowSink {
public:
    Feed(std::string path, const EvaluationSetup& asked, const Watcher& watcher)
        : path_(std::move(path)), asked_(asked), watcher_(watcher) {}

    Status header(const CaptureHeader& header) override {
        waiting_.header = header;
        if (!asked_.sheet.empty()) {
            auto sheet = loadSheet(asked_.sheet);
            if (!sheet) return sheet.error();
            given_.sheet = std::move(*sheet);
        }
        if (!asked_.meter.empty()) {
            auto meter = loadMeter(asked_.meter);
            if (!meter) return meter.error();
            given_.meter = std::move(*meter);
        }
        lacksSheet_ = !given_.sheet && !header.sheet;
        auto setup = setupNow();
        if (!setup) return setup.error();
        if (!setup->meterLearnt) begin(std::move(*setup));
        return Done{};
    }

    void reading(const Reading& reading) override {
        if (examination_) return push(reading);
        waiting_.add(reading);
        if (waiting_.readings.size() == kTeachingReadings) begin(std::move(*setupNow()));
    }

    void readings(const Reading* first, std::size_t count) override {
        std::size_t i = 0;
        for (; i < count && !examination_; ++i) reading(first[i]);
        if (watcher_.reading) {
            for (; i < count; ++i) push(first[i]);
        } else if (i < count) {
            examination_->push(first + i, count - i);
        }
    }

    void mark(const Mark& mark) override {
        if (examination_)
            push(mark);
        else
            waiting_.add(mark);
    }

    Evaluation finish(ReadSummary summary) {
        if (!examination_) begin(std::move(*setupNow()));
        return {std::move(waiting_.header), std::move(setup_), std::move(summary), examination_->findings(), {}, {}};
    }
    [[nodiscard]] bool lacksSheet() const { return lacksSheet_; }
    [[nodiscard]] const OutsideSteps& outside() const { return outside_; }

private:
    void push(const Reading& reading) {
        const PushResult result = examination_->push(reading);
        if (watcher_.reading) watcher_.reading(reading, result, *examination_);
    }
    void push(const Mark& mark) {
        outside_.mark(mark);
        examination_->push(mark);
        if (watcher_.mark) watcher_.mark(mark, *examination_);
    }

    [[nodiscard]] Result<ExaminationSetup> setupNow() const {
        return examinationSetup(waiting_.header, given_, waiting_.readings, path_);
    }
    void begin(ExaminationSetup setup) {
        setup_ = std::move(setup);
        examination_.emplace(setup_);
        waiting_.eachRow([this](const auto& row) { push(row); });
    }

    std::string path_;
    const EvaluationSetup& asked_;
    const Watcher& watcher_;
    SetupOverrides given_;
    bool lacksSheet_ = false;
    OutsideSteps outside_;
    Capture waiting_; // header and all
    ExaminationSetup setup_;
    std::optional<Examination> examination_;
};

} // namespace

namespace {

Result<Evaluation> evaluateOnce(const std::string& path, const EvaluationSetup& setup, const Watcher& watcher,
                                bool& lacksSheet) {
    Feed feed(path, setup, watcher);
    auto summary = readCapture(path, feed, setup.import);
    lacksSheet = feed.lacksSheet();
    if (!summary) return summary.error();
    Evaluation evaluation = feed.finish(std::move(*summary));
    std::error_code none;
    const auto stretches = feed.outside().stretches(evaluation.findings.duration);
    if (!stretches.empty() && std::filesystem::is_regular_file(path, none))
        evaluation.outsideSteps = dropoutsOutside(path, setup.import, evaluation.setup, stretches);
    return evaluation;
}

std::string listed(const std::vector<std::string>& names) {
    std::string out;
    for (const std::string& name : names) out += (out.empty() ? "" : ", ") + name;
    return out;
}

} // namespace

Result<Evaluation> evaluateCapture(const std::string& path, const EvaluationSetup& setup, const Watcher& watcher) {
    bool lacksSheet = false;
    auto evaluation = evaluateOnce(path, setup, watcher, lacksSheet);
    if (evaluation) {
        const auto& plateaus = evaluation->findings.plateaus;
        const bool none = !plateaus.empty() && std::all_of(plateaus.begin(), plateaus.end(),
                                                           [](const Stay& stay) { return stay.windows.empty(); });
        if (none) evaluation->fittingSheets = fittingSheets(plateaus);
        return evaluation;
    }
    std::error_code none;
    if (!lacksSheet || !std::filesystem::is_regular_file(path, none)) return evaluation;
    // Which levels it holds hangs on no sheet, so any will do to find them.
    Error error = evaluation.error();
    for (const Named& sheet : listNamed("sheets")) {
        EvaluationSetup trial = setup;
        trial.sheet = sheet.path;
        if (auto tried = evaluateOnce(path, trial, {}, lacksSheet)) {
            if (const auto fit = fittingSheets(tried->findings.plateaus); !fit.empty())
                error.mend = {"name one with --sheet; the levels fit %1 (`stillwire sheets` lists all)",
                              {listed(fit)}};
            break;
        }
    }
    return error;
}

} // namespace stillwire
