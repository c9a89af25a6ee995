// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/link/replay.hpp"

namespace stillwire {

namespace {

class ReplayLink final : public Link, public ReplayRows {
public:
    ReplayLink(Capture capture, std::string name) : capture_(std::move(capture)), name_(std::move(name)) {}

    Status open() override { return Done{}; }
    int descriptor() const override { return -1; }
    LinkEvent read(std::span<std::uint8_t>) override {
        return {.kind = atEnd() ? LinkEvent::Kind::ended : LinkEvent::Kind::nothing, .arrived = time_};
    }
    Status write(std::span<const std::uint8_t>) override { return Done{}; } // nobody listens
    Time now() const override { return time_; }
    Time nextDue() const override { return Time(0); }
    std::string name() const override { return name_; }
    ReplayRows* rows() override { return this; }

    bool atEnd() const override { return next_ == capture_.rows.size(); }
    Time nextTime() const override {
        const Capture::Row& row = capture_.rows[next_];
        return row.isMark ? capture_.marks[row.index].time : capture_.readings[row.index].time;
    }
    std::variant<Reading, Mark> take() override {
        time_ = nextTime();
        const Capture::Row& row = capture_.rows[next_++];
        if (row.isMark) return capture_.marks[row.index];
        return capture_.readings[row.index];
    }
    const Capture& capture() const override { return capture_; }

private:
    Capture capture_;
    std::string name_;
    std::size_t next_ = 0;
    Time time_{0};
};

} // namespace

std::unique_ptr<Link> makeReplayLink(Capture capture, std::string name) {
    return std::make_unique<ReplayLink>(std::move(capture), std::move(name));
}

Result<Replay> openReplay(const std::string& path, const ImportOptions& options) {
    auto capture = loadCapture(path, options);
    if (!capture) return capture.error();
    Replay out;
    out.header = capture->header;
    out.warnings = capture->summary.warnings;
    out.link = makeReplayLink(std::move(capture.value()), path);
    return out;
}

} // namespace stillwire
