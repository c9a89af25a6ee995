// SPDX-License-Identifier: GPL-3.0-or-later
// What of a led run is said aloud, and when: each caution once, before the hand that needs it; each instruction and
// question; the section of the harness that comes next; the stop; the verdict. Decides, and speaks nothing.
#pragma once

#include "app/window/feed.hpp"

#include <set>
#include <string>

#include <QString>

namespace stillwire {

class Teller {
public:
    [[nodiscard]] QString hear(const Scene& scene); // empty: nothing new
    void reset() { *this = Teller{}; }              // another session

private:
    QString sayNew(const Prompt& prompt);

    QString said_;
    std::string section_; // of the harness, last named
    std::set<QString> cautions_;
    bool stopped_ = false, over_ = false;
};

} // namespace stillwire
