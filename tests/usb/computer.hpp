// SPDX-License-Identifier: GPL-3.0-or-later
// An emulated computer with two USB serial adapters that can be plugged and pulled, driven from its console.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <sys/types.h>
#include <vector>

namespace stillwire {

// The far end of an emulated adapter: it is plugged in while its socket is connected.
class Adapter {
public:
    explicit Adapter(std::string socketPath) : path_(std::move(socketPath)) {}
    ~Adapter() { pull(); }
    Adapter(const Adapter&) = delete;
    Adapter& operator=(const Adapter&) = delete;

    bool plug();
    void pull();
    // Waits while the adapter takes no more; false after ten seconds of that, or when it is out.
    bool send(std::span<const std::uint8_t> bytes);
    std::string receive(int milliseconds); // what the program wrote

private:
    std::string path_;
    int socket_ = -1;
};

class Computer {
public:
    // `folder` holds kernel/vmlinux and initramfs; sockets and the trace go there.
    explicit Computer(const std::string& folder);
    ~Computer();
    Computer(const Computer&) = delete;
    Computer& operator=(const Computer&) = delete;

    bool boot(); // waits until the drivers are loaded

    struct Answer {
        int status = -1; // of the command; -1: it did not end in time
        std::string out;
    };
    // A line for the shell inside.
    Answer run(const std::string& command, int seconds = 60);
    // Tries `command` twenty times a second until its status is 0; false after `seconds` of the computer's own time.
    bool until(const std::string& command, int seconds = 30);

    // What the adapters were told since the last time asked, a line each: usb_serial_set_baud … baud 9600.
    std::vector<std::string> traced();

    Adapter ours, other;

private:
    bool readLine(std::string& line, int milliseconds);

    std::string folder_;
    pid_t process_ = -1;
    int in_ = -1, out_ = -1; // the console
    std::string pending_;
    std::size_t tracedBytes_ = 0;
};

} // namespace stillwire
