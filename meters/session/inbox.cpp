// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/inbox.hpp"

#include <sys/eventfd.h>
#include <unistd.h>
#include <utility>

namespace stillwire {

Inbox::Inbox() : descriptor_(eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)) {}

Inbox::~Inbox() { close(descriptor_); }

void Inbox::put(Ask ask) {
    {
        const std::lock_guard lock(mutex_);
        asks_.push_back(std::move(ask));
    }
    eventfd_write(descriptor_, 1);
}

std::vector<Ask> Inbox::takeAll() {
    eventfd_t count = 0;
    eventfd_read(descriptor_, &count);
    const std::lock_guard lock(mutex_);
    return std::exchange(asks_, {});
}

} // namespace stillwire
