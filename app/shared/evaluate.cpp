// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shared/evaluate.hpp"

#include "app/shared/resources.hpp"

#include <optional>
#include <variant>

namespace stillwire {

namespace {

constexpr std::size_t kSample = 512; // readings to learn a meter from that nobody described

// Takes the rows; those before the meter is known wait in `waiting_`.
class Feed : public RowSink {
public:
    Feed(std::string path, const EvaluationSetup& asked, const Watcher& watcher)
        : path_(std::move(path)), asked_(asked), watcher_(watcher) {}

    Status header(const CaptureHeader& header) override {
        header_ = header;
        setup_.probe = header.probe;
        setup_.black = header.black;
        setup_.referenceMeter = header.referenceMeter;
        if (!asked_.sheet.empty()) {
            auto sheet = loadSheet(asked_.sheet);
            if (!sheet) return sheet.error();
            setup_.sheet = std::move(*sheet);
        } else if (header.sheet) {
            setup_.sheet = *header.sheet;
        } else {
            Error e;
            e.where = path_;
            e.what = "has no sensor sheet in its header";
            e.mend = "name one with --sheet (`stillwire sheets` lists them)";
            return e;
        }
        if (!asked_.meter.empty()) {
            auto meter = loadMeter(asked_.meter);
            if (!meter) return meter.error();
            setup_.meter = std::move(*meter);
        } else if (header.meter) {
            setup_.meter = *header.meter;
        } else {
            setup_.meterKnown = false;
        }
        // A description may leave out what the trace itself can tell.
        if (setup_.meter.interval_s > 0 && !setup_.meter.ranges.empty()) examination_.emplace(setup_);
        return Done{};
    }

    void reading(const Reading& reading) override {
        if (examination_) return push(reading);
        sample_.push_back(reading);
        waiting_.emplace_back(reading);
        if (sample_.size() >= kSample) learn();
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
            waiting_.emplace_back(mark);
    }

    Evaluation finish(ReadSummary summary) {
        if (!examination_) learn();
        return {std::move(header_), std::move(setup_), std::move(summary), examination_->findings()};
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

    void learn() {
        const MeterTraits seen = learnMeter(sample_);
        if (setup_.meter.interval_s <= 0) setup_.meter.interval_s = seen.interval_s;
        if (setup_.meter.ranges.empty()) {
            setup_.meter.ranges = seen.ranges;
            setup_.meterKnown = false; // its accuracy at least is assumed
        }
        examination_.emplace(setup_);
        for (const auto& row : waiting_) std::visit([this](const auto& r) { push(r); }, row);
        waiting_.clear();
        sample_.clear();
    }

    std::string path_;
    const EvaluationSetup& asked_;
    const Watcher& watcher_;
    CaptureHeader header_;
    ExaminationSetup setup_;
    std::optional<Examination> examination_;
    std::vector<Reading> sample_;
    std::vector<std::variant<Reading, Mark>> waiting_;
};

} // namespace

Result<Evaluation> evaluateCapture(const std::string& path, const EvaluationSetup& setup, const Watcher& watcher) {
    Feed feed(path, setup, watcher);
    auto summary = readCapture(path, feed, setup.import);
    if (!summary) return summary.error();
    return feed.finish(std::move(*summary));
}

} // namespace stillwire
