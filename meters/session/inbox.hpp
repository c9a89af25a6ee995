// SPDX-License-Identifier: GPL-3.0-or-later
// What other threads ask of the session's thread, in order, with a descriptor that wakes its poll().
#pragma once

#include "core/base/time.hpp"
#include "core/procedure/procedure.hpp"

#include <mutex>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace stillwire {

struct AskMark {
    std::string text;
};
struct AskSave {
    std::string path;
};
struct AskStop {};
struct Ask {
    std::variant<Command, AskMark, AskSave, AskStop> what;
    std::optional<Time> stamp; // since the capture's start; absent: the link's own clock, when it is handled
};

class Inbox {
public:
    Inbox();
    ~Inbox();
    Inbox(const Inbox&) = delete;
    Inbox& operator=(const Inbox&) = delete;

    void put(Ask ask);
    std::vector<Ask> takeAll();
    [[nodiscard]] int descriptor() const { return descriptor_; }

private:
    int descriptor_ = -1; // eventfd
    std::mutex mutex_;
    std::vector<Ask> asks_; // guarded by mutex_
};

} // namespace stillwire
