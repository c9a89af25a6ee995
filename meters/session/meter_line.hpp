// SPDX-License-Identifier: GPL-3.0-or-later
// One meter of a session: its link, its decoder, what it is asked and when, and how the way from it is. A lost port
// is waited out here. Used by the session's thread alone.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/link/link.hpp"
#include "meters/session/link_watch.hpp"
#include "meters/session/poller.hpp"

#include <array>
#include <deque>
#include <memory>
#include <string>
#include <vector>

namespace stillwire {

class MeterLine {
public:
    class Listener {
    public:
        virtual ~Listener() = default;
        virtual void lineBytes(MeterLine&, std::span<const std::uint8_t>, Time) {} // before they are decoded
        virtual void lineReading(MeterLine& from, const Reading& reading) = 0;
        virtual void lineLost(MeterLine& from, Time at) = 0; // what follows does not touch what came before
        virtual void lineChanged(bool urgent) = 0;           // something to show
    };

    // The link must be open. `decoder` is null for a replayed capture, which is never served.
    MeterLine(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder, const MeterDescription& description);

    void begin(Time zero); // the capture's start, by the link's clock
    void greet();          // start-up commands, then who it is and what it refused, then the first poll
    // What came, or another try at a port that is gone. `rounds`: reads at most. False: the link has ended.
    bool serve(Listener& listener, int rounds);
    void slept(double seconds_s); // the computer did: what comes next may begin inside a frame
    void leave();                 // hands the front panel back; nothing is read afterwards

    [[nodiscard]] Link& link() { return *link_; }
    [[nodiscard]] const Link& link() const { return *link_; }
    [[nodiscard]] LinkWatch& watch() { return watch_; }
    [[nodiscard]] const LinkWatch& watch() const { return watch_; }
    [[nodiscard]] bool realClock() const { return realClock_; } // the link's clock is CLOCK_BOOTTIME
    [[nodiscard]] int descriptor() const { return realClock_ ? link_->descriptor() : -1; } // to poll on; -1: none
    [[nodiscard]] Time now() const { return link_->now() - zero_; }
    [[nodiscard]] Time wait(Time longest) const; // until it wants to be served
    [[nodiscard]] std::size_t garbageBytes() const { return decoder_ ? decoder_->droppedBytes() : 0; }

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
