// SPDX-License-Identifier: GPL-3.0-or-later
// What the command line does to files, and lets files do to a terminal: nothing lost, nothing overwritten unasked.
#include "tests/app/cli/made_capture.hpp"
#include "tests/app/cli/program.hpp"

#include <atomic>
#include <chrono>
#include <cstdlib>
#include <fcntl.h>
#include <thread>
#include <unistd.h>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {

using ::testing::HasSubstr;
using ::testing::Not;

namespace {

void expectStays(const Folder& f, const std::string& name, const Ran& r) {
    EXPECT_EQ(r.status, 3);
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_THAT(r.err, HasSubstr("--force"));
    EXPECT_EQ(f.read(name), "precious");
}

// A meter on a terminal of its own, silent until it sends.
class Meter {
public:
    Meter() : master_(::posix_openpt(O_RDWR | O_NOCTTY)) {
        if (master_ < 0 || ::grantpt(master_) != 0 || ::unlockpt(master_) != 0) std::abort();
        port_ = ::ptsname(master_);
    }
    ~Meter() {
        over_ = true;
        if (sender_.joinable()) sender_.join();
        ::close(master_);
    }
    Meter(const Meter&) = delete;
    Meter& operator=(const Meter&) = delete;

    [[nodiscard]] const std::string& port() const { return port_; }
    void sends() {
        sender_ = std::thread([this] {
            const std::string line = "+0.812 V DC\r\n";
            while (!over_) {
                [[maybe_unused]] const ssize_t sent = ::write(master_, line.data(), line.size());
                std::this_thread::sleep_for(std::chrono::milliseconds(100));
            }
        });
    }

private:
    int master_;
    std::string port_;
    std::atomic<bool> over_{false};
    std::thread sender_;
};

} // namespace

TEST(Files, AReportOverwritesNothingUnasked) {
    const Folder f;
    const std::string capture = f.write("c.csv", madeCapture()), report = f.write("r.html", "precious");
    expectStays(f, "r.html", run({"report", capture, "-o", report}));
    EXPECT_EQ(run({"report", capture, "-o", report, "--force"}).status, 0);
    EXPECT_THAT(f.read("r.html"), HasSubstr("<svg"));
}

TEST(Files, AReportNeverOverwritesItsCapture) {
    const Folder f;
    const std::string capture = f.write("c.html", madeCapture());
    const Ran r = run({"report", capture, "-o", capture, "--force"});
    EXPECT_EQ(r.status, 3);
    EXPECT_THAT(r.err, HasSubstr("is the capture that is read"));
    EXPECT_EQ(f.read("c.html"), madeCapture());
}

TEST(Files, ATruthOverwritesNothingUnasked) {
    const Folder f;
    const std::string truth = f.write("t.csv", "precious");
    expectStays(f, "t.csv", run({"simulate", "--script", "good-pedal", "-o", f.path("new.csv"), "--truth", truth}));
    EXPECT_EQ(f.read("new.csv"), "");
    EXPECT_EQ(
        run({"simulate", "--script", "good-pedal", "-o", f.path("new.csv"), "--truth", truth, "--force"}).status, 0);
    EXPECT_THAT(f.read("t.csv"), HasSubstr("{"));
}

TEST(Files, ADashIsStandardInput) {
    const Folder f;
    const std::string capture = f.write("c.csv", madeCapture());
    const std::string command = "cat " + capture + " | env XDG_STATE_HOME=" + f.path("state") + " " +
                                STILLWIRE_PROGRAM + " analyse - --json >" + f.path("piped");
    ASSERT_EQ(std::system(command.c_str()), 0);
    EXPECT_EQ(f.read("piped"), run({"analyse", capture, "--json"}).out);
}

TEST(Files, WhatATerminalObeysNeverReachesIt) {
    const Folder f;
    std::string capture = madeCapture();
    capture.insert(capture.find("time_s,volts,flags,mark\n") + 24, "0,,,note:a\x7f"
                                                                   "b\xC2\x9B"
                                                                   "2J\n");
    const Ran r = run({"replay", f.write("c\x1b[31m.csv", capture)});
    ASSERT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("note:a?b?2J"));
    EXPECT_THAT(r.out, HasSubstr("c?[31m.csv"));
    EXPECT_THAT(r.out, Not(HasSubstr("\x1b")));
    const Ran refused = run({"analyse", f.path("no\x1b[31m\nsuch.csv")});
    EXPECT_THAT(refused.err, HasSubstr("no?[31m such.csv"));
    EXPECT_EQ(refused.errLines(), 1);
}

TEST(Record, ASilentMeterLeavesNothingThatBlocksTheNextTry) {
    const Folder f;
    const Meter silent;
    for (int i = 0; i < 2; ++i) {
        const Ran r = run({"record", "--port", silent.port(), "--meter", "text-line-logger", "--sheet",
                           "resurfacer-drive-pedal", "-o", f.path("r.csv"), "--duration", "1"});
        EXPECT_EQ(r.status, 3);
        EXPECT_EQ(r.errLines(), 1) << r.err;
        EXPECT_THAT(r.err, HasSubstr("no reading came, and no capture is kept"));
        EXPECT_EQ(f.read("r.csv"), "");
    }
}

TEST(Record, ATerminalThatGoesAwayEndsItAsTheEndOfTheRunDoes) {
    const Folder f;
    Meter meter;
    meter.sends();
    const Ran r = run({"record", "--port", meter.port(), "--meter", "text-line-logger", "--sheet",
                       "resurfacer-drive-pedal", "--no-guide", "-o", f.path("r.csv")},
                      "timeout -s HUP 3");
    EXPECT_EQ(r.err, "");
    EXPECT_THAT(r.out, HasSubstr(" readings are in " + f.path("r.csv")));
    EXPECT_THAT(f.read("r.csv"), HasSubstr(",0.812,,\n"));
}

TEST(Simulate, ServeSaysWhatCanOpenWhatItPrints) {
    const Ran r = run({"simulate", "--script", "good-pedal", "--serve"}, "timeout 2");
    const std::string port = r.out.substr(0, r.out.find('\n'));
    EXPECT_THAT(port, ::testing::StartsWith("/dev/"));
    EXPECT_THAT(r.out, HasSubstr("stillwire record --port " + port + " --meter text-line-logger"));
}

TEST(Files, ASheetThatMakesLittleSenseSaysSo) {
    const Folder f;
    std::string sheet = test::kPedalSheet;
    const auto change = [&sheet](const std::string& from, const std::string& to) {
        const std::size_t at = sheet.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        sheet.replace(at, from.size(), to);
    };
    change("max_drop_V = 0.10", "max_drop_V = 5.0");
    change("max_V = 0.95", "max_V = 4.00");
    const Ran r = run({"analyse", f.write("c.csv", madeCapture()), "--sheet", f.write("s.toml", sheet)});
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_THAT(r.out, HasSubstr("the windows of released and pressed overlap"));
    EXPECT_THAT(r.out, HasSubstr("the sheet allows the ground to drop by 5.00 V"));
}

TEST(Files, AnApertureLongerThanItsIntervalIsRefused) {
    const Folder f;
    std::string meter = kMeterToml;
    meter.replace(meter.find("aperture_s = 0.10"), 17, "aperture_s = 0.50");
    const Ran r = run({"analyse", f.write("c.csv", madeCapture()), "--meter", f.write("m.toml", meter)});
    EXPECT_EQ(r.status, 3);
    EXPECT_THAT(r.err, HasSubstr("m.toml:4: "));
    EXPECT_THAT(r.err, HasSubstr("aperture_s 0.5000 is longer than interval_s 0.3300"));
}

} // namespace stillwire::testing
