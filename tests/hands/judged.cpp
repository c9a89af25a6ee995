// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/judged.hpp"

#include "core/capture/reader.hpp"
#include "core/examination_capture.hpp"

#include <algorithm>

namespace stillwire::hands {
namespace {

class Collector : public RowSink {
public:
    Status header(const CaptureHeader& header) override {
        capture.header = header;
        return Done{};
    }
    void reading(const Reading& reading) override { capture.add(reading); }
    void mark(const Mark& mark) override { capture.add(mark); }
    Capture capture;
};

} // namespace

Judged judge(const LedRun& run) {
    Judged judged;
    Collector collector;
    const Result<ReadSummary> read = readCaptureText(run.capture, nameOf(run.request), collector);
    if (!read) {
        judged.error = read.error().text();
        return judged;
    }
    const Capture& capture = collector.capture;
    const std::size_t teaching = std::min(capture.readings.size(), kTeachingReadings);
    Result<ExaminationSetup> setup =
        examinationSetup(capture.header, {}, {capture.readings.data(), teaching}, nameOf(run.request));
    if (!setup) {
        judged.error = setup.error().text();
        return judged;
    }
    Examination examination(std::move(*setup));
    pushRows(capture, examination);
    const Verdict verdict = examination.findings().verdict;
    judged.decision = verdict.decision;
    judged.again = verdict.again;
    if (!verdict.reasons.empty()) judged.reason = verdict.reasons.front().says.english();
    for (const auto& one : verdict.next) judged.next.push_back(one.says.english());
    return judged;
}

bool right(const LedRun& run, const Judged& judged) {
    const std::vector<Decision>& good = row(run.subject.fault).right;
    return judged.error.empty() && std::find(good.begin(), good.end(), judged.decision) != good.end();
}

} // namespace stillwire::hands
