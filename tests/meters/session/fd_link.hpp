// SPDX-License-Identifier: GPL-3.0-or-later
// A link over one end of a socket pair, for tests with two meters at once; the test plays the instrument at the other
// end.
#pragma once

#include "meters/link/clock.hpp"
#include "meters/link/link.hpp"

#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <gtest/gtest.h>

namespace stillwire {

class FdLink final : public Link {
public:
    // `instrument` gets the other end; closing it is a pulled cable.
    explicit FdLink(int& instrument) {
        int ends[2] = {-1, -1};
        EXPECT_EQ(socketpair(AF_UNIX, SOCK_STREAM, 0, ends), 0);
        descriptor_ = ends[0];
        instrument = ends[1];
    }
    ~FdLink() override {
        if (descriptor_ >= 0) ::close(descriptor_);
    }
    FdLink(const FdLink&) = delete;
    FdLink& operator=(const FdLink&) = delete;

    Status open() override {
        if (descriptor_ >= 0) return Done{};
        return Error{.where = name(), .what = "it is gone", .mend = "put it back"};
    }
    int descriptor() const override { return descriptor_; }
    LinkEvent read(std::span<std::uint8_t> buffer) override {
        pollfd waiting{descriptor_, POLLIN, 0};
        if (::poll(&waiting, 1, 0) <= 0) return {.kind = LinkEvent::Kind::nothing, .arrived = now()};
        const ssize_t count = ::recv(descriptor_, buffer.data(), buffer.size(), 0);
        if (count > 0) return {LinkEvent::Kind::bytes, static_cast<std::size_t>(count), now()};
        ::close(descriptor_);
        descriptor_ = -1;
        return {.kind = LinkEvent::Kind::lost, .arrived = now()};
    }
    Status write(std::span<const std::uint8_t> bytes) override {
        if (::send(descriptor_, bytes.data(), bytes.size(), MSG_NOSIGNAL) >= 0) return Done{};
        return Error{.where = name(), .what = "it takes nothing", .mend = "look at it"};
    }
    Time now() const override { return bootTime(); }
    Time nextDue() const override { return Time(-1); }
    std::string name() const override { return "second meter"; }

private:
    int descriptor_ = -1;
};

} // namespace stillwire
