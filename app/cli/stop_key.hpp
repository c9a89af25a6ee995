// SPDX-License-Identifier: GPL-3.0-or-later
// A key that ends what runs on a terminal: q, Escape, Enter, or Ctrl-C. Without a terminal a line that begins with q.
#pragma once

#include <optional>
#include <termios.h>

namespace stillwire {

class StopKey {
public:
    StopKey();
    ~StopKey();
    StopKey(const StopKey&) = delete;
    StopKey& operator=(const StopKey&) = delete;

    // Waits up to `wait_ms`, or until `other` (a descriptor, -1: none) has something to read.
    [[nodiscard]] bool pressed(int wait_ms, int other = -1);

private:
    std::optional<termios> before_; // of the terminal
    bool open_ = true;              // the input has not ended
};

} // namespace stillwire
