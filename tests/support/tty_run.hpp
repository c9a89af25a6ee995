// SPDX-License-Identifier: GPL-3.0-or-later
// A session that records from a kernel terminal into a file of its own, which goes when the test is over.
#pragma once

#include "meters/decode/decoder.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/session.hpp"
#include "tests/meters/session/script_link.hpp"
#include "tests/support/kernel_tty.hpp"
#include "tests/support/within.hpp"

#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace stillwire {

// Blind for a cause that the meter showed: on a busy computer a test's own pause may be a gap.
inline std::vector<BlindSpan> blindAsShown(std::vector<BlindSpan> spans) {
    std::erase_if(spans, [](const BlindSpan& span) { return span.cause == BlindCause::gap; });
    return spans;
}

struct TtyRun {
    std::string path;
    std::unique_ptr<Session> session; // null: it did not start, and the test has failed

    // A KernelTty must be there already. Waits until a whole frame is no longer taken for the rest of one.
    TtyRun(const MeterDescription& meter, const std::string& name, std::optional<MeterPort> reference = {})
        : path(capturePath(name)) {
        auto started = Session::start({makeSerialLink(KernelTty::kPort, meter.link), meter}, headerFor(meter),
                                      {.guided = false, .capturePath = path}, std::move(reference));
        EXPECT_TRUE(started) << started.error().text();
        if (started) session = std::move(started.value());
        std::this_thread::sleep_for(std::chrono::milliseconds(60));
    }
    ~TtyRun() {
        session.reset();
        std::remove(path.c_str());
    }
    TtyRun(const TtyRun&) = delete;
    TtyRun& operator=(const TtyRun&) = delete;

    [[nodiscard]] std::shared_ptr<const SessionSnapshot> now() const { return session->snapshot(); }
    [[nodiscard]] bool sees(std::size_t readings) const {
        return within(std::chrono::seconds(30), [&] { return now()->trace.size() >= readings; });
    }
    [[nodiscard]] bool says(const std::string& text) const {
        return within(std::chrono::seconds(30),
                      [&] { return now()->linkSays.english().find(text) != std::string::npos; });
    }
};

} // namespace stillwire
