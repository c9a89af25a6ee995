// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/serve.hpp"

#include "meters/decode/encode.hpp"
#include "meters/link/clock.hpp"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <iostream>
#include <stdlib.h>
#include <termios.h>
#include <thread>
#include <unistd.h>

namespace stillwire {

namespace {

Error ptyError(const char* what) {
    Error e;
    e.kind = Error::Kind::ourFault;
    e.where = "pseudo-terminal";
    e.what = {"%1: %2", {what, std::strerror(errno)}};
    e.mend = "check that /dev/pts is mounted";
    return e;
}

// The master, with the other side kept open and raw so that nothing is echoed back before a reader comes.
class Terminal {
public:
    Status open() {
        master_ = ::posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK);
        if (master_ < 0 || ::grantpt(master_) != 0 || ::unlockpt(master_) != 0) return ptyError("cannot be made");
        char buffer[128];
        if (::ptsname_r(master_, buffer, sizeof buffer) != 0) return ptyError("has no name");
        name_ = buffer;
        slave_ = ::open(buffer, O_RDWR | O_NOCTTY);
        termios settings{};
        if (slave_ < 0 || ::tcgetattr(slave_, &settings) != 0) return ptyError("cannot be opened");
        ::cfmakeraw(&settings);
        if (::tcsetattr(slave_, TCSANOW, &settings) != 0) return ptyError("cannot be set up");
        return Done{};
    }
    ~Terminal() {
        if (slave_ >= 0) ::close(slave_);
        if (master_ >= 0) ::close(master_);
    }
    Terminal() = default;
    Terminal(const Terminal&) = delete;
    Terminal& operator=(const Terminal&) = delete;

    [[nodiscard]] const std::string& name() const { return name_; }
    // A full queue drops the frame, as a meter's wire does when nobody listens.
    void send(const std::vector<std::uint8_t>& bytes) const {
        [[maybe_unused]] const ssize_t sent = ::write(master_, bytes.data(), bytes.size());
    }

private:
    int master_ = -1, slave_ = -1;
    std::string name_;
};

} // namespace

Status serve(const Capture& capture, const MeterDescription& meter, const std::string& name) {
    Terminal terminal;
    if (const Status opened = terminal.open(); !opened) return opened;
    std::cout << terminal.name() << "\n"
              << "It opens as a port: stillwire record --port " << terminal.name() << " --meter " << name
              << ", or stillwire listen --port " << terminal.name() << std::endl;
    const double resolution_V = meter.traits.ranges.empty() ? 0.001 : meter.traits.ranges.front().resolution_V;
    const Time start = bootTime();
    for (const Reading& reading : capture.readings) {
        const Time due = start + reading.time - bootTime();
        if (due > Time(0)) std::this_thread::sleep_for(due);
        terminal.send(encodeFrame(meter.frame, reading, resolution_V));
    }
    return Done{};
}

} // namespace stillwire
