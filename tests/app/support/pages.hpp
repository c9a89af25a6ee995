// SPDX-License-Identifier: GPL-3.0-or-later
// Every page and state of the window by name, on invented figures or on the demo captures: what the tests measure and
// look_at shows.
#pragma once

#include "app/window/bench_window.hpp"
#include "tests/app/support/fake_session.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace stillwire::test {

// The window and what stands behind it; one Stage turns to any number of pages.
struct Stage {
    FakeDoors* doors = nullptr;
    std::unique_ptr<BenchWindow> window;
    Stage();

    void show(std::shared_ptr<SessionSnapshot> snapshot); // on the bench
    void start();                                         // an unused start page
};

struct Page {
    std::string name;
    std::function<void(Stage&)> turnTo;
};
[[nodiscard]] std::vector<Page> pages();

} // namespace stillwire::test
