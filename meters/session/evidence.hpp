// SPDX-License-Identifier: GPL-3.0-or-later
// The path of a row behind the decoder: recorded first, examined, put on the trace; and what the examination says of
// it.
#pragma once

#include "core/capture/reader.hpp"
#include "core/examination.hpp"
#include "core/trace/trace.hpp"
#include "meters/session/recorder.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace stillwire {

class Evidence {
public:
    Evidence(ExaminationSetup setup, Recorder& recorder);
    // What the header leaves open of the meter, the rows that come teach: as long as they do, each judgement looks at
    // all of them again, by what they have taught by then. So it says what the capture would.
    void learnAs(const CaptureHeader& header);

    // A row before the last one gets the last one's time: times never decrease.
    PushResult take(Reading reading);
    void take(Mark mark);

    // Judged again if rows came and the last time is at least 0.1 s ago by the clock of `now`, or when `force`.
    const std::shared_ptr<const Findings>& judge(Time now, bool force = false);
    [[nodiscard]] const std::shared_ptr<const Findings>& findings() const { return findings_; } // as last judged

    [[nodiscard]] const Trace& trace() const { return trace_; }
    [[nodiscard]] const std::vector<Mark>& marks() const { return marks_; }
    [[nodiscard]] Time lastRow() const { return lastRow_; }
    [[nodiscard]] const Reading& lastReading() const { return lastReading_; }
    [[nodiscard]] bool stepOpen() const { return stepOpen_; }

private:
    void relearn();

    Recorder& recorder_;
    Examination examination_;
    std::optional<Capture> learning_; // all so far, until the meter is known
    Trace trace_;
    std::vector<Mark> marks_;
    std::shared_ptr<const Findings> findings_;
    Time lastRow_{0}, judgedAt_{0};
    Reading lastReading_;
    bool stale_ = false, judged_ = false, stepOpen_ = false;
};

} // namespace stillwire
