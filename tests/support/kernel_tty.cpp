// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/kernel_tty.hpp"

#include "tests/support/lent_calls.hpp"
#include "tests/support/within.hpp"

#include <asm/termbits.h>
#include <chrono>
#include <poll.h>
#include <sys/ioctl.h>
#include <thread>
#include <unistd.h>

namespace stillwire {

namespace {
using namespace std::chrono_literals;

constexpr auto kForever = 30s; // what takes longer never comes

// The terminal's settings, with speeds beyond the old table.
termios2 settings() {
    termios2 out{};
    lent::realIoctl(lent::state().slave, TCGETS2, &out);
    return out;
}

bool sendAll(int descriptor, std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        pollfd room{descriptor, POLLOUT, 0};
        if (poll(&room, 1, 2000) <= 0) return false;
        const ssize_t count = write(descriptor, bytes.data(), bytes.size());
        if (count < 0) return false;
        bytes = bytes.subspan(static_cast<std::size_t>(count));
    }
    return true;
}
} // namespace

KernelTty::KernelTty() {
    lent::state().opens = 0;
    lent::state().absent = false;
    lent::state().serving = true;
}

KernelTty::~KernelTty() {
    lent::state().serving = false;
    lent::state().absent = false;
    closeSlave();
}

bool KernelTty::opened() const { return lent::state().master >= 0; }
int KernelTty::opens() const { return lent::state().opens; }

bool KernelTty::waitOpened(int opens, int milliseconds) const {
    for (int i = 0; i < milliseconds && !(lent::state().opens >= opens && opened()); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return lent::state().opens >= opens && opened();
}

bool KernelTty::send(std::span<const std::uint8_t> bytes) {
    lent::state().sent += bytes.size();
    return sendAll(lent::state().slave, bytes);
}

bool KernelTty::send(const std::string& text) {
    return send(std::span(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}

std::string KernelTty::receive(int milliseconds) {
    pollfd waiting{lent::state().slave, POLLIN, 0};
    if (poll(&waiting, 1, milliseconds) <= 0) return {};
    char buffer[256];
    const ssize_t count = read(lent::state().slave, buffer, sizeof buffer);
    if (count <= 0) return {};
    lent::state().received += static_cast<std::size_t>(count);
    return {buffer, static_cast<std::size_t>(count)};
}

std::string KernelTty::receiveAll() {
    std::string out;
    (void)within(kForever, [&] {
        if (lent::state().received < lent::state().written) out += receive(1);
        return lent::state().received >= lent::state().written;
    });
    return out;
}

bool KernelTty::waitArrived() const {
    return within(kForever, [] {
        int ready = 0;
        lent::realIoctl(lent::state().master, FIONREAD, &ready);
        return lent::state().taken + static_cast<std::size_t>(ready) >= lent::state().sent;
    });
}

bool KernelTty::waitTaken() const {
    return within(kForever, [] { return lent::state().taken >= lent::state().sent; });
}

bool KernelTty::waitIdle() const {
    const int before = lent::state().calls;
    return within(kForever, [before] { return lent::state().calls != before; });
}

bool KernelTty::dtr() const { return (lent::state().modemLines & TIOCM_DTR) != 0; }
bool KernelTty::rts() const { return (lent::state().modemLines & TIOCM_RTS) != 0; }
unsigned KernelTty::baud() const { return settings().c_ospeed; }
int KernelTty::bits() const { return (lent::state().controlBits & CSIZE) == CS7 ? 7 : 8; }
char KernelTty::parity() const {
    const unsigned bits = lent::state().controlBits;
    return (bits & PARENB) == 0 ? 'N' : (bits & PARODD) != 0 ? 'O' : 'E';
}
int KernelTty::stopBits() const { return (settings().c_cflag & CSTOPB) != 0 ? 2 : 1; }

bool KernelTty::hangUp() { return lent::realIoctl(lent::state().master, TIOCVHANGUP, nullptr) == 0; }

void KernelTty::vanish() {
    lent::state().vanished = true;
    closeSlave(); // wakes who waits
}

void KernelTty::setAbsent(bool absent) { lent::state().absent = absent; }

void KernelTty::closeSlave() {
    if (const int slave = lent::state().slave.exchange(-1); slave >= 0) close(slave);
}

int KernelTty::callsSinceAsked() { return lent::state().calls.exchange(0); }

void KernelTty::redirect(const std::string& path) {
    const std::lock_guard lock(lent::state().mutex);
    lent::state().redirect = path;
}

const char* const SecondTty::kPort = lent::kSecondPort;

SecondTty::SecondTty() { lent::state().servingSecond = true; }
SecondTty::~SecondTty() {
    lent::state().servingSecond = false;
    closeSlave();
}

bool SecondTty::send(std::span<const std::uint8_t> bytes) { return sendAll(lent::state().secondSlave, bytes); }

void SecondTty::closeSlave() {
    if (const int slave = lent::state().secondSlave.exchange(-1); slave >= 0) close(slave);
}

} // namespace stillwire
