// SPDX-License-Identifier: GPL-3.0-or-later
// A serial instrument behind a kernel terminal, for tests: the program opens kPort through libserialport and gets the
// master of a pseudo-terminal; this object holds the slave and plays the instrument. What a pseudo-terminal lacks of
// a serial port (modem lines, 7 bits, parity) and the pulling of an adapter are lent by lent_calls.cpp. One at a
// time.
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace stillwire {

class KernelTty {
public:
    static constexpr const char* kPort = "/dev/ptmx";

    KernelTty(); // every open of kPort from now on is answered by this object
    ~KernelTty();
    KernelTty(const KernelTty&) = delete;
    KernelTty& operator=(const KernelTty&) = delete;

    [[nodiscard]] bool opened() const; // the program holds the port
    [[nodiscard]] int opens() const;   // how often it opened it
    bool waitOpened(int opens, int milliseconds) const;

    bool send(std::span<const std::uint8_t> bytes);
    bool send(const std::string& text);
    std::string receive(int milliseconds); // what the program wrote; empty after the time
    // The kernel passes bytes on in its own time. These wait for all that are under way, for as long as it takes:
    std::string receiveAll(); // what the program wrote and nobody received yet
    bool waitArrived() const; // what was sent lies ready for the program, or was read by it
    bool waitTaken() const;   // the program has read all that was sent
    bool waitIdle() const;    // it has dealt with what it read or wrote, and looks at the port again

    [[nodiscard]] bool dtr() const;
    [[nodiscard]] bool rts() const;
    [[nodiscard]] unsigned baud() const;
    [[nodiscard]] int bits() const;
    [[nodiscard]] char parity() const; // 'N', 'E', 'O'
    [[nodiscard]] int stopBits() const;

    // The adapter is pulled: by the kernel's own hang-up (root only; false if refused), or by lent calls that answer
    // alike.
    [[nodiscard]] bool hangUp();
    void vanish();
    // While absent an open of the port fails with ENOENT, as for a name that is not there.
    void setAbsent(bool absent);
    void closeSlave(); // the far end closed alone: not the same

    // Calls of poll() and of read() on the port since the last time asked: a spin shows as thousands.
    [[nodiscard]] static int callsSinceAsked();
    // The next opens of kPort open `path` instead; empty: the multiplexer again.
    static void redirect(const std::string& path);
};

// Another instrument on another port, for two meters at once; it only sends, and shares the modem lines.
class SecondTty {
public:
    static const char* const kPort;

    SecondTty();
    ~SecondTty();
    SecondTty(const SecondTty&) = delete;
    SecondTty& operator=(const SecondTty&) = delete;

    bool send(std::span<const std::uint8_t> bytes);
    void closeSlave(); // the port fails at the next read
};

} // namespace stillwire
