// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/link_watch.hpp"

#include "core/base/sentence.hpp"

#include <algorithm>

namespace stillwire {

namespace {
// Long enough for a range change, short enough to be told before a step is wasted. Common practice, no source.
constexpr Time kSilence = std::chrono::milliseconds(2500);
constexpr Time kTellBack = std::chrono::seconds(10);
} // namespace

LinkWatch::LinkWatch(std::string port, const MeterDescription& description)
    : port_(std::move(port)), baud_(description.link.baud), polled_(!description.link.pollCommand.empty()),
      silentAfter_(std::max(kSilence, fromSeconds(4 * description.traits.interval_s))) {}

void LinkWatch::opened(std::string port, Time now) {
    backSays_.clear();
    if (lost_) {
        backSays_ = port == port_ ? port + " is back" : "the adapter is back as " + port;
        backSays_ += " after " + seconds(toSeconds(now - lostAt_)) + "; the capture went on with a gap";
    }
    port_ = std::move(port);
    openedAt_ = backAt_ = now;
    lost_ = anyBytes_ = anyReading_ = false;
    complaint_.clear();
    lostBecause_.clear();
}

void LinkWatch::bytesCame(Time now) {
    anyBytes_ = true;
    bytesAt_ = now;
}

void LinkWatch::readingCame(const Reading& reading) {
    anyReading_ = true;
    readingAt_ = reading.time;
    last_ = reading;
}

void LinkWatch::lost(Time now) {
    lost_ = true;
    lostAt_ = now;
}

void LinkWatch::slept(double seconds_s, Time now) {
    backAt_ = now;
    backSays_ = "the computer slept for " + seconds(seconds_s) + "; the capture has a gap there";
}

LinkState LinkWatch::state(Time now) const {
    if (ended_) return LinkState::ended;
    if (lost_) return LinkState::lost;
    const Time since = anyReading_ ? readingAt_ : openedAt_;
    if (now - since > silentAfter_) return LinkState::silent;
    return anyReading_ ? LinkState::live : LinkState::opening;
}

std::string LinkWatch::saysSilent(Time now) const {
    const std::string baud = std::to_string(baud_) + " baud";
    if (anyBytes_ && now - bytesAt_ <= silentAfter_) {
        return "bytes come from " + port_ +
               " but no reading: " + (complaint_.empty() ? std::string("they form no frame") : complaint_) +
               "; check " + baud + " and the meter description";
    }
    if (anyReading_)
        return "the meter on " + port_ + " has been silent for " + seconds(toSeconds(now - readingAt_)) +
               ": look whether it switched itself off, then at the cable";
    return std::string("nothing comes from the meter on ") + port_ +
           (polled_ ? ": switch it on, set it to remote, and check the cable and "
                    : ": switch it on, press its data-output key, and check the cable and ") +
           baud;
}

std::string LinkWatch::says(Time now) const {
    switch (state(now)) {
    case LinkState::lost:
        return port_ + " is gone: put the cable back; the capture goes on by itself" +
               (lostBecause_.empty() ? "" : " (" + lostBecause_ + ")");
    case LinkState::silent: return saysSilent(now);
    case LinkState::live: break;
    case LinkState::opening: return backSays_;
    case LinkState::ended:
    case LinkState::failed: return {};
    }
    if (last_.flags.has(Flag::unit))
        return "the meter does not show DC volts: turn it to DC volts, relative mode off";
    if (last_.flags.has(Flag::overload))
        return "the meter shows overload: choose a range that holds 6 V, and check the leads";
    if (last_.flags.has(Flag::hold)) return "hold is on, so the number stands still: press the hold key";
    if (last_.flags.has(Flag::lowbat)) return "the meter's battery is low: change it, its numbers cannot be trusted";
    if (!backSays_.empty() && now - backAt_ < kTellBack) return backSays_;
    if (rangeBlind_s_ > 0) return "lock the meter's range: it went blind for " + seconds(rangeBlind_s_);
    return {};
}

} // namespace stillwire
