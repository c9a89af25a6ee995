// SPDX-License-Identifier: GPL-3.0-or-later
// One meter of a session: its link, its decoder, what it is asked and when, and how the way from it is. A lost port
// is waited out here. Used by the session's thread alone.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/link/link.hpp"
#include "meters/session/input.hpp"
#include "meters/session/link_watch.hpp"
#include "meters/session/poller.hpp"

#include <array>
#include <deque>
#include <memory>
#include <string>
#include <vector>

namespace stillwire {

class MeterLine final : public Input {
public:
    explicit MeterLine(MeterPort port); // its link must be open

    [[nodiscard]] std::string name() const override { return link_->name(); }
    [[nodiscard]] bool live() const override { return true; }
    [[nodiscard]] bool realClock() const override { return realClock_; }
    [[nodiscard]] Time clock() const override { return link_->now(); }
    void begin(Time zero) override { zero_ = zero; }
    void greet() override; // start-up commands, then who it is and what it refused, then the first poll
    bool serve(Listener& listener) override; // also another try at a port that is gone
    void slept(double seconds_s) override;   // what comes next may begin inside a frame
    void leave() override;                   // hands the front panel back
    [[nodiscard]] Time now() const override { return link_->now() - zero_; }
    [[nodiscard]] int descriptor() const override { return realClock_ ? link_->descriptor() : -1; }
    [[nodiscard]] Time wait(Time longest) const override;
    void blindWas(const std::vector<BlindSpan>& blind, Time now) override { watch_.blindWas(blind, now); }
    [[nodiscard]] LinkState state(Time now) const override { return watch_.state(now); }
    [[nodiscard]] Sentence says(Time now) const override { return watch_.says(now); }
    [[nodiscard]] std::size_t garbageBytes() const override { return decoder_->droppedBytes(); }

private:
    void takeBytes(Listener& listener, std::size_t count, Time arrived);
    void answered();
    void heed(const Answer& answer);
    void lose(Listener& listener, Time at);
    void comeBack(Listener& listener);
    void tryAgain(Listener& listener);
    void ask();
    void send(const std::string& command);

    std::unique_ptr<Link> link_;
    std::unique_ptr<Decoder> decoder_;
    LinkSettings settings_;
    LinkWatch watch_;
    Poller poller_;
    std::deque<std::string> questions_; // asked before the polls go on, one at a time
    bool asking_ = false;               // the first of them is on its way
    int refusals_ = 0;                  // read from the error queue, in a row
    std::vector<Reading> decoded_;
    std::array<std::uint8_t, 4096> buffer_{};
    Time zero_{0};
    Time openedAt_{0};  // to tell a torn first frame; at the start that is 0
    bool fresh_ = true; // no bytes since it opened
    Time retryAt_{0};   // of a lost port, by the waking clock
    bool realClock_, lost_ = false;
};

} // namespace stillwire
