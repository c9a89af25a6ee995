// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/evidence.hpp"

#include "core/examination_capture.hpp"

#include <algorithm>
#include <utility>

namespace stillwire {

namespace {
constexpr Time kJudgeEvery = std::chrono::milliseconds(100);
} // namespace

Evidence::Evidence(ExaminationSetup setup, Recorder& recorder) : recorder_(recorder), examination_(std::move(setup)) {
    findings_ = std::make_shared<const Findings>(examination_.findings());
}

void Evidence::learnAs(const CaptureHeader& header) {
    auto setup = examinationSetup(header, {}, {}, {});
    if (setup && setup->meterLearnt) learning_.emplace().header = header;
}

void Evidence::relearn() {
    auto setup = examinationSetup(learning_->header, {}, learning_->readings, {});
    examination_ = Examination(std::move(*setup));
    pushRows(*learning_, examination_);
    if (learning_->readings.size() >= kTeachingReadings) learning_.reset();
}

PushResult Evidence::take(Reading reading) {
    reading.time = lastRow_ = std::max(reading.time, lastRow_);
    recorder_.append(reading);
    const PushResult result = examination_.push(reading);
    if (learning_) learning_->add(reading);
    if (learning_ && learning_->readings.size() == kTeachingReadings) relearn();
    stale_ = true;
    if (reading.flags.has(Flag::ref)) return result; // the trace and the number are the signal's
    trace_.append({reading.time, reading.volts_V});
    lastReading_ = reading;
    return result;
}

void Evidence::take(Mark mark) {
    mark.time = lastRow_ = std::max(mark.time, lastRow_);
    recorder_.append(mark);
    examination_.push(mark);
    if (learning_) learning_->add(mark);
    if (mark.as<StepMark>()) stepOpen_ = true;
    if (mark.as<StepEndMark>()) stepOpen_ = false;
    marks_.push_back(std::move(mark));
    stale_ = true;
}

const std::shared_ptr<const Findings>& Evidence::judge(Time now, bool force) {
    if (stale_ && (force || !judged_ || now - judgedAt_ >= kJudgeEvery)) {
        if (learning_) relearn();
        findings_ = std::make_shared<const Findings>(examination_.findings());
        judgedAt_ = now;
        judged_ = true;
        stale_ = false;
    }
    return findings_;
}

} // namespace stillwire
