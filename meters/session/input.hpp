// SPDX-License-Identifier: GPL-3.0-or-later
// Where a session's readings and marks come from. Two makes: a meter on a link, and a capture played again. Used by
// the session's thread alone.
#pragma once

#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "meters/session/session.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace stillwire {

class Input {
public:
    class Listener {
    public:
        virtual ~Listener() = default;
        virtual void inputBytes(Input&, std::span<const std::uint8_t>, Time) {} // before they are decoded
        virtual void inputReading(Input& from, const Reading& reading) = 0;
        virtual void inputMark(Input& from, Mark mark) = 0; // one that a capture holds
        virtual void inputLost(Input& from, Time at) = 0;   // what follows does not touch what came before
        virtual void inputChanged(bool urgent) = 0;         // something to show
    };
    virtual ~Input() = default;

    [[nodiscard]] virtual std::string name() const = 0;         // of the port or the file
    [[nodiscard]] virtual bool live() const = 0;                // false: it was led and recorded before
    [[nodiscard]] virtual bool realClock() const = 0;           // its clock is CLOCK_BOOTTIME
    [[nodiscard]] virtual bool watched() const { return true; } // false: it goes by faster than anybody can look
    [[nodiscard]] virtual Time clock() const = 0;               // by its own clock

    virtual void begin(Time zero) = 0; // the capture's start, by its clock
    virtual void greet() {}            // what a meter is told and asked first
    // What has come, at most so much that asks are looked at in between. False: the input has ended.
    virtual bool serve(Listener& listener) = 0;
    virtual void slept(double /*seconds_s*/) {} // the computer did
    virtual void leave() {}                     // nothing is read afterwards

    [[nodiscard]] virtual Time now() const = 0;              // since the capture's start
    [[nodiscard]] virtual int descriptor() const = 0;        // to poll on; -1: none
    [[nodiscard]] virtual Time wait(Time longest) const = 0; // until it wants to be served
    // How the way to it is. `blind`: what the examination found so far, the open span last.
    virtual void blindWas(const std::vector<BlindSpan>& /*blind*/, Time /*now*/) {}
    [[nodiscard]] virtual LinkState state(Time now) const = 0;
    [[nodiscard]] virtual Sentence says(Time) const { return {}; } // empty when all is well
    [[nodiscard]] virtual std::size_t garbageBytes() const { return 0; }
};

} // namespace stillwire
