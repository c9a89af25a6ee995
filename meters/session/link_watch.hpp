// SPDX-License-Identifier: GPL-3.0-or-later
// How the way from the meter is, in a state and a sentence: from what came and when. Pure; times are the session's.
#pragma once

#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "meters/decode/decoder.hpp"
#include "meters/describe/description.hpp"
#include "meters/session/session.hpp"

#include <string>

namespace stillwire {

class LinkWatch {
public:
    LinkWatch(std::string port, const MeterDescription& description);

    void opened(std::string port, Time now); // at the start, and back after a loss
    void bytesCame(Time now);
    void readingCame(const Reading& reading, NotVolts notVolts = NotVolts::unsaid);
    void complained(Sentence complaint) { complaint_ = std::move(complaint); }
    void lost(Time now);
    void stillLost(Sentence why) { lostBecause_ = std::move(why); } // why the last try to open again failed
    void slept(double seconds_s, Time now);
    void refused(std::string answer) { refused_ = std::move(answer); } // an entry of the meter's error queue
    void blindWas(const std::vector<BlindSpan>& blind, Time now);      // all so far, the open one last

    [[nodiscard]] LinkState state(Time now) const;
    [[nodiscard]] Sentence says(Time now) const;

private:
    [[nodiscard]] Sentence saysSilent(Time now) const;
    [[nodiscard]] Sentence saysReading() const;

    std::string port_;
    int baud_;
    bool polled_;
    Time silentAfter_{0};
    Time openedAt_{0}, bytesAt_{0}, readingAt_{0}, lostAt_{0}, backAt_{0};
    bool anyBytes_ = false, anyReading_ = false; // since it opened
    bool lost_ = false;
    Reading last_;
    Sentence complaint_, lostBecause_, backSays_;
    std::string refused_;
    NotVolts notVolts_ = NotVolts::unsaid;
    bool frozen_ = false;
    std::size_t toldBlind_ = 0;
    Sentence rangeSays_; // what the range changes so far come to
};

// What two meters have to say, in one sentence; either may be empty.
[[nodiscard]] Sentence saidOfBoth(Sentence signal, const Sentence& reference);

} // namespace stillwire
