// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/replay_input.hpp"

#include "meters/link/clock.hpp"

#include <algorithm>

namespace stillwire {

namespace {
constexpr std::size_t kRowsInARow = 4096; // then asks are looked at
} // namespace

void ReplayInput::begin(Time) { playFrom_ = awakeTime(); }

Time ReplayInput::nextTime() const {
    const Capture::Row& row = capture_.rows[next_];
    return row.isMark ? capture_.marks[row.index].time : capture_.readings[row.index].time;
}

Time ReplayInput::played() const { return fromSeconds(toSeconds(awakeTime() - playFrom_) * speed_); }

Time ReplayInput::now() const { return !watched() || atEnd() ? shown_ : std::clamp(played(), shown_, nextTime()); }

Time ReplayInput::wait(Time longest) const {
    if (!watched()) return Time(0);
    if (atEnd()) return longest;
    return std::min(longest, fromSeconds(toSeconds(nextTime()) / speed_) - (awakeTime() - playFrom_));
}

bool ReplayInput::serve(Listener& listener) {
    const Time due = played();
    for (std::size_t i = 0; i < kRowsInARow && !atEnd(); ++i) {
        if (watched() && nextTime() > due) return true;
        shown_ = nextTime();
        const Capture::Row& row = capture_.rows[next_++];
        if (row.isMark)
            listener.inputMark(*this, capture_.marks[row.index]);
        else
            listener.inputReading(*this, capture_.readings[row.index]);
    }
    return !atEnd();
}

} // namespace stillwire
