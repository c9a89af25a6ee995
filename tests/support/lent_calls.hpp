// SPDX-License-Identifier: GPL-3.0-or-later
// What the interposed calls of lent_calls.cpp share with KernelTty.
#pragma once

#include <atomic>
#include <cstddef>
#include <functional>
#include <mutex>
#include <string>

namespace stillwire::lent {

// Another name of the multiplexer, which libserialport takes for another port.
inline constexpr const char* kSecondPort = "/dev/./ptmx";

struct State {
    std::atomic<int> master{-1}; // the descriptor the program holds
    std::atomic<int> slave{-1};
    std::atomic<int> opens{0};
    std::atomic<bool> serving{false}; // a KernelTty is there
    std::atomic<int> secondSlave{-1}; // of the port of a SecondTty
    std::atomic<bool> servingSecond{false};
    std::atomic<bool> vanished{false}; // calls on `master` answer as for a pulled adapter
    std::atomic<bool> absent{false};
    std::atomic<int> modemLines{0};
    std::atomic<unsigned> controlBits{0}; // CSIZE, PARENB, PARODD as the program set them
    std::atomic<int> calls{0};
    // Bytes since the last opening: written to `master` by the program, received by the test, sent by the test, read
    // from `master` by the program.
    std::atomic<std::size_t> written{0}, received{0}, sent{0}, taken{0};
    // Called in place of every wait of the program for `master`, with its limit in ms; null: the wait is real.
    std::atomic<const std::function<void(int)>*> waits{nullptr};
    std::atomic<int> syncDelay_ms{0}; // every sync to the disk takes at least this long
    std::atomic<int> slowSyncs{0};
    std::atomic<int> writeDelay_ms{0}; // every write to a file on a disk takes at least this long
    std::atomic<int> slowWrites{0};    // that have begun
    std::atomic<int> slowWritesOver{0};
    std::mutex mutex;
    std::string redirect; // guarded by mutex
};
State& state();

void slowSync();
void slowWrite(int descriptor);
// The real call.
int realIoctl(int descriptor, unsigned long request, void* argument);

} // namespace stillwire::lent
