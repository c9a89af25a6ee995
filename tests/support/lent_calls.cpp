// SPDX-License-Identifier: GPL-3.0-or-later
// Calls that the test program answers itself before the C library does: the linker exports them because libserialport
// refers to them. All but a few requests on a pseudo-terminal's master go through unchanged.
#include "tests/support/lent_calls.hpp"

#include <cerrno>
#include <cstdarg>
#include <cstring>
#include <dlfcn.h>
#include <fcntl.h>
#include <poll.h>
#include <stdlib.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <termios.h>
#include <unistd.h>

namespace stillwire::lent {

State& state() {
    static State instance;
    return instance;
}

namespace {

template <class Function> Function* real(const char* name) {
    return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

bool isMaster(int descriptor) {
    struct stat status {};
    return fstat(descriptor, &status) == 0 && status.st_rdev == makedev(5, 2);
}

constexpr unsigned kKept = CSIZE | PARENB | PARODD;

bool isGone(int descriptor) { return state().vanished && descriptor >= 0 && descriptor == state().master; }

// The instrument's end of a master, which passes bytes on as they are; -1: there is none.
int slaveOf(int master) {
    static auto* const open = real<int(const char*, int, ...)>("open");
    char name[64];
    unlockpt(master);
    if (ptsname_r(master, name, sizeof name) != 0) return -1;
    const int slave = open(name, O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC, mode_t(0));
    termios raw{};
    static auto* const get = real<int(int, termios*)>("tcgetattr");
    static auto* const set = real<int(int, int, const termios*)>("tcsetattr");
    if (get(slave, &raw) == 0) {
        cfmakeraw(&raw);
        set(slave, TCSANOW, &raw);
    }
    return slave;
}

int openPort(const char* path, int flags, mode_t mode) {
    static auto* const open = real<int(const char*, int, ...)>("open");
    State& shared = state();
    if (shared.servingSecond && std::strcmp(path, kSecondPort) == 0) {
        const int master = open(path, flags, mode);
        if (const int before = shared.secondSlave.exchange(slaveOf(master)); before >= 0) close(before);
        return master;
    }
    if (std::strcmp(path, "/dev/ptmx") != 0) return open(path, flags, mode);
    std::string other;
    {
        const std::lock_guard lock(shared.mutex);
        other = shared.redirect;
    }
    if (!other.empty()) return open(other.c_str(), flags, mode);
    if (!shared.serving) return open(path, flags, mode);
    if (shared.absent) {
        errno = ENOENT;
        return -1;
    }
    const int master = open(path, flags, mode);
    if (master < 0) return master;
    const int slave = slaveOf(master);
    if (slave < 0) return master;
    if (const int before = shared.slave.exchange(slave); before >= 0) close(before);
    shared.vanished = false;
    shared.modemLines = 0;
    shared.controlBits = CS8;
    shared.written = shared.received = shared.sent = shared.taken = 0;
    shared.master = master;
    ++shared.opens;
    return master;
}

} // namespace

int realIoctl(int descriptor, unsigned long request, void* argument) {
    static auto* const ioctl = real<int(int, unsigned long, ...)>("ioctl");
    return ioctl(descriptor, request, argument);
}

namespace {
// In pieces, so that a test that is over need not wait.
void slow(const std::atomic<int>& delay_ms) {
    const int begun_ms = delay_ms;
    for (int i = 0; i < begun_ms / 10 && delay_ms > 0; ++i) usleep(10'000);
}
} // namespace

void slowSync() {
    if (state().syncDelay_ms <= 0) return;
    ++state().slowSyncs;
    slow(state().syncDelay_ms);
}

void slowWrite(int descriptor) {
    struct stat status {};
    if (state().writeDelay_ms <= 0 || fstat(descriptor, &status) != 0 || !S_ISREG(status.st_mode)) return;
    ++state().slowWrites;
    slow(state().writeDelay_ms);
    ++state().slowWritesOver;
}

} // namespace stillwire::lent

using stillwire::lent::isGone;
using stillwire::lent::isMaster;
using stillwire::lent::kKept;
using stillwire::lent::real;
using stillwire::lent::state;

extern "C" {

int ioctl(int descriptor, unsigned long request, ...) noexcept {
    va_list arguments;
    va_start(arguments, request);
    void* argument = va_arg(arguments, void*);
    va_end(arguments);
    if (isGone(descriptor)) {
        errno = EIO;
        return -1;
    }
    const bool lines = request == TIOCMGET || request == TIOCMSET || request == TIOCMBIS || request == TIOCMBIC;
    if (lines && isMaster(descriptor)) {
        // A hung-up terminal has no lines either.
        int waiting = 0;
        if (stillwire::lent::realIoctl(descriptor, FIONREAD, &waiting) != 0) return -1;
        int* bits = static_cast<int*>(argument);
        if (request == TIOCMGET)
            *bits = state().modemLines;
        else if (request == TIOCMSET)
            state().modemLines = *bits;
        else if (request == TIOCMBIS)
            state().modemLines |= *bits;
        else
            state().modemLines &= ~*bits;
        return 0;
    }
    return stillwire::lent::realIoctl(descriptor, request, argument);
}

int open(const char* path, int flags, ...) {
    va_list arguments;
    va_start(arguments, flags);
    const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(arguments, mode_t) : 0;
    va_end(arguments);
    return stillwire::lent::openPort(path, flags, mode);
}

int open64(const char* path, int flags, ...) {
    va_list arguments;
    va_start(arguments, flags);
    const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(arguments, mode_t) : 0;
    va_end(arguments);
    return stillwire::lent::openPort(path, flags, mode);
}

// What open() becomes in a library built with checks.
int __open_2(const char* path, int flags) { return stillwire::lent::openPort(path, flags, 0); }

int close(int descriptor) {
    static auto* const realClose = real<int(int)>("close");
    if (descriptor >= 0 && descriptor == state().master) {
        state().master = -1;
        state().vanished = false;
    }
    return realClose(descriptor);
}

ssize_t read(int descriptor, void* buffer, size_t count) {
    static auto* const realRead = real<ssize_t(int, void*, size_t)>("read");
    const bool port = descriptor >= 0 && descriptor == state().master;
    if (port) ++state().calls;
    const ssize_t done = isGone(descriptor) ? 0 : realRead(descriptor, buffer, count);
    if (port && done > 0) state().taken += static_cast<size_t>(done);
    return done;
}

ssize_t write(int descriptor, const void* buffer, size_t count) {
    static auto* const realWrite = real<ssize_t(int, const void*, size_t)>("write");
    stillwire::lent::slowWrite(descriptor);
    if (isGone(descriptor)) {
        errno = EIO;
        return -1;
    }
    const ssize_t done = realWrite(descriptor, buffer, count);
    if (done > 0 && descriptor == state().master) state().written += static_cast<size_t>(done);
    return done;
}

int poll(pollfd* descriptors, nfds_t count, int timeout) {
    static auto* const realPoll = real<int(pollfd*, nfds_t, int)>("poll");
    for (nfds_t i = 0; i < count; ++i) {
        const bool port = descriptors[i].fd >= 0 && descriptors[i].fd == state().master;
        if (port) ++state().calls;
        if (const auto* waits = state().waits.load(); port && timeout > 0 && waits != nullptr) {
            (*waits)(timeout);
            return realPoll(descriptors, count, 0);
        }
        if (!isGone(descriptors[i].fd)) continue;
        for (nfds_t k = 0; k < count; ++k) descriptors[k].revents = 0;
        descriptors[i].revents = POLLIN | POLLHUP | POLLERR;
        return 1;
    }
    return realPoll(descriptors, count, timeout);
}

int fdatasync(int descriptor) {
    static auto* const realSync = real<int(int)>("fdatasync");
    stillwire::lent::slowSync();
    return realSync(descriptor);
}

int fsync(int descriptor) {
    static auto* const realSync = real<int(int)>("fsync");
    stillwire::lent::slowSync();
    return realSync(descriptor);
}

int tcgetattr(int descriptor, termios* settings) noexcept {
    static auto* const realGet = real<int(int, termios*)>("tcgetattr");
    const int result = realGet(descriptor, settings);
    if (result == 0 && isMaster(descriptor))
        settings->c_cflag = (settings->c_cflag & ~tcflag_t(kKept)) | state().controlBits;
    return result;
}

int tcsetattr(int descriptor, int actions, const termios* settings) noexcept {
    static auto* const realSet = real<int(int, int, const termios*)>("tcsetattr");
    if (!isMaster(descriptor)) return realSet(descriptor, actions, settings);
    state().controlBits = settings->c_cflag & kKept;
    termios plain = *settings;
    plain.c_cflag = (plain.c_cflag & ~tcflag_t(kKept)) | CS8;
    return realSet(descriptor, actions, &plain);
}

} // extern "C"
