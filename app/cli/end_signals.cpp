// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/end_signals.hpp"

#include <csignal>

namespace stillwire {

namespace {

volatile std::sig_atomic_t asked = 0;
constexpr int kSignals[] = {SIGINT, SIGTERM, SIGHUP};

} // namespace

void catchEndSignals() {
    asked = 0;
    struct sigaction quiet {};
    quiet.sa_handler = [](int) { asked = 1; };
    for (const int one : kSignals) sigaction(one, &quiet, nullptr);
}

void leaveEndSignals() {
    for (const int one : kSignals) std::signal(one, SIG_DFL);
}

bool endAsked() { return asked != 0; }

} // namespace stillwire
