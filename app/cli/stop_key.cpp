// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/stop_key.hpp"

#include "app/cli/end_signals.hpp"

#include <poll.h>
#include <unistd.h>

namespace stillwire {

StopKey::StopKey() {
    catchEndSignals();
    termios settings{};
    if (isatty(STDIN_FILENO) == 0 || tcgetattr(STDIN_FILENO, &settings) != 0) return;
    before_ = settings;
    settings.c_lflag &= ~static_cast<tcflag_t>(ICANON | ECHO); // each key at once, and not shown
    tcsetattr(STDIN_FILENO, TCSANOW, &settings);
}

StopKey::~StopKey() {
    if (before_) tcsetattr(STDIN_FILENO, TCSANOW, &*before_);
    leaveEndSignals();
}

bool StopKey::pressed(int wait_ms, int other) {
    pollfd waiting[2] = {{open_ ? STDIN_FILENO : -1, POLLIN, 0}, {other, POLLIN, 0}};
    if (::poll(waiting, 2, wait_ms) > 0 && waiting[0].revents != 0) {
        char keys[64];
        const ssize_t count = ::read(STDIN_FILENO, keys, sizeof keys);
        if (count <= 0) open_ = false;
        for (ssize_t i = 0; i < count; ++i) {
            const char key = keys[i];
            if (key == 'q' || key == 'Q' || (before_ && (key == '\n' || key == '\r' || key == 27))) return true;
        }
    }
    return endAsked();
}

} // namespace stillwire
