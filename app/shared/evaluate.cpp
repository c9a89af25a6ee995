// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/evaluate.hpp"

#include "app/shared/resources.hpp"

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
        return {std::move(waiting_.header), std::move(setup_), std::move(summary), examination_->findings()};
    }

private:
    void push(const Reading& reading) {
        const PushResult result = examination_->push(reading);
        if (watcher_.reading) watcher_.reading(reading, result, *examination_);
    }
    void push(const Mark& mark) {
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
    Capture waiting_; // header and all
    ExaminationSetup setup_;
    std::optional<Examination> examination_;
};

} // namespace

Result<Evaluation> evaluateCapture(const std::string& path, const EvaluationSetup& setup, const Watcher& watcher) {
    Feed feed(path, setup, watcher);
    auto summary = readCapture(path, feed, setup.import);
    if (!summary) return summary.error();
    return feed.finish(std::move(*summary));
}

} // namespace stillwire
