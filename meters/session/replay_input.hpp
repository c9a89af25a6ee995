// SPDX-License-Identifier: GPL-3.0-or-later
// A capture played again: its rows in the order of the file, at a speed.
#pragma once

#include "core/capture/reader.hpp"
#include "meters/session/input.hpp"

namespace stillwire {

class ReplayInput final : public Input {
public:
    // `speed`: 2 is twice as fast as it was recorded; 0 is as fast as it goes.
    ReplayInput(Capture capture, std::string name, double speed)
        : capture_(std::move(capture)), name_(std::move(name)), speed_(speed) {}

    [[nodiscard]] std::string name() const override { return name_; }
    [[nodiscard]] bool live() const override { return false; }
    [[nodiscard]] bool realClock() const override { return false; }
    [[nodiscard]] bool watched() const override { return speed_ > 0; }
    [[nodiscard]] Time clock() const override { return shown_; }
    void begin(Time zero) override;
    bool serve(Listener& listener) override;
    [[nodiscard]] Time now() const override;
    [[nodiscard]] int descriptor() const override { return -1; }
    [[nodiscard]] Time wait(Time longest) const override;
    [[nodiscard]] LinkState state(Time) const override { return LinkState::live; }

private:
    [[nodiscard]] bool atEnd() const { return next_ == capture_.rows.size(); }
    [[nodiscard]] Time nextTime() const; // precondition: !atEnd()
    [[nodiscard]] Time played() const;   // time of the capture, by the waking clock

    Capture capture_;
    std::string name_;
    double speed_;
    std::size_t next_ = 0;
    Time shown_{0};    // of the newest row given
    Time playFrom_{0}; // by the waking clock
};

} // namespace stillwire
