// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/link_watch.hpp"

#include "core/analyse/blind_mend.hpp"
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
    backSays_ = {};
    if (lost_)
        backSays_ = {port == port_ ? "%1 is back after %2; the capture went on with a gap"
                                   : "the adapter is back as %1 after %2; the capture went on with a gap",
                     {port, seconds(toSeconds(now - lostAt_))}};
    port_ = std::move(port);
    openedAt_ = backAt_ = now;
    lost_ = anyBytes_ = anyReading_ = false;
    complaint_ = {};
    refused_.clear();
    frozen_ = false;
    lostBecause_ = {};
}

void LinkWatch::bytesCame(Time now) {
    anyBytes_ = true;
    bytesAt_ = now;
}

void LinkWatch::readingCame(const Reading& reading, NotVolts notVolts) {
    notVolts_ = notVolts;
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
    backSays_ = {"the computer slept for %1; the capture has a gap there", {seconds(seconds_s)}};
}

void LinkWatch::blindWas(const std::vector<BlindSpan>& blind, Time now) {
    frozen_ = !blind.empty() && blind.back().cause == BlindCause::frozen && blind.back().to >= readingAt_;
    if (blind.size() <= toldBlind_) return;
    toldBlind_ = blind.size();
    const BlindSpan& last = blind.back();
    if (last.cause != BlindCause::autorange) return;
    const BlindTime lately = blindTime(blind, BlindCause::autorange, now - kHuntingWithin, now);
    rangeSays_ =
        lately.spans >= kHunting
            ? Sentence{"lock the meter's range: it changed %1 times in a minute and was blind for %2 of it",
                       {std::to_string(lately.spans), seconds(lately.total_s)}}
            : Sentence{"lock the meter's range: it went blind for %1", {seconds(toSeconds(last.to - last.from))}};
}

LinkState LinkWatch::state(Time now) const {
    if (lost_) return LinkState::lost;
    const Time since = anyReading_ ? readingAt_ : openedAt_;
    if (now - since > silentAfter_) return LinkState::silent;
    return anyReading_ ? LinkState::live : LinkState::opening;
}

Sentence LinkWatch::saysSilent(Time now) const {
    const std::string baud = std::to_string(baud_);
    if (anyBytes_ && now - bytesAt_ <= silentAfter_)
        return {"bytes come from %1 but no reading: %2; check %3 baud and the meter description",
                {port_, complaint_.empty() ? Sentence{"they form no frame"} : complaint_, baud}};
    if (anyReading_)
        return {
            "the meter on %1 has been silent for %2: it may have switched itself off; switch it on with its auto-off "
            "disabled, then look at the cable",
            {port_, seconds(toSeconds(now - readingAt_))}};
    return {
        polled_
            ? "nothing comes from the meter on %1: switch it on, set it to remote, and check the cable and %2 baud"
            : "nothing comes from the meter on %1: switch it on, press its data-output key, and check the cable "
              "and %2 baud",
        {port_, baud}};
}

Sentence LinkWatch::says(Time now) const {
    switch (state(now)) {
    case LinkState::lost:
        if (lostBecause_.empty()) return {"%1 is gone: put the cable back; the capture goes on by itself", {port_}};
        return {"%1 is gone: put the cable back; the capture goes on by itself (%2)", {port_, lostBecause_}};
    case LinkState::silent: return saysSilent(now);
    case LinkState::live: break;
    case LinkState::opening: return backSays_;
    case LinkState::ended: return {}; // said by the session, not here
    }
    if (const Sentence reading = saysReading(); !reading.empty()) return reading;
    if (!backSays_.empty() && now - backAt_ < kTellBack) return backSays_;
    if (!refused_.empty())
        return {"the meter on %1 refuses a command (%2): correct [link] in its description", {port_, refused_}};
    return rangeSays_;
}

// What is wrong with the newest reading.
Sentence LinkWatch::saysReading() const {
    if (last_.flags.has(Flag::unit)) {
        switch (notVolts_) {
        case NotVolts::relative: return "relative mode is on, so the meter does not show volts: switch it off";
        case NotVolts::alternating: return "the meter shows AC: turn it to DC volts";
        case NotVolts::lowImpedance:
            return "the meter's low-impedance mode pulls the signal down: turn it to plain DC volts";
        case NotVolts::unsaid: return "the meter does not show DC volts: turn it to DC volts, relative mode off";
        }
    }
    if (last_.flags.has(Flag::overload))
        return "the meter shows overload: choose a range that holds 6 V, and check the leads";
    if (last_.flags.has(Flag::hold)) return "hold is on, so the number stands still: press the hold key";
    if (frozen_) return "the number stands still, more than its own noise allows: switch the meter off and on again";
    if (last_.flags.has(Flag::lowbat)) return "the meter's battery is low: change it, its numbers cannot be trusted";
    return {};
}

Sentence saidOfBoth(Sentence signal, const Sentence& reference) {
    if (reference.empty()) return signal;
    if (signal.empty()) return {"on the reference: %1", {reference}};
    return {"%1; on the reference: %2", {std::move(signal), reference}};
}

} // namespace stillwire
