// SPDX-License-Identifier: GPL-3.0-or-later
// The serial link over a kernel terminal: settings arrive, bytes pass unchanged, a loss is told and never spun on.
#include "meters/link/clock.hpp"
#include "meters/link/port_lock.hpp"
#include "meters/link/serial_link.hpp"
#include "tests/support/kernel_tty.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <poll.h>
#include <sys/file.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <gtest/gtest.h>

namespace stillwire {

namespace {

// Reads until `count` bytes came or nothing came for a while.
std::string readAll(Link& link, std::size_t count) {
    std::string out;
    std::array<std::uint8_t, 256> buffer{};
    while (out.size() < count) {
        pollfd waiting{link.descriptor(), POLLIN, 0};
        if (poll(&waiting, 1, 30'000) <= 0) break;
        const LinkEvent event = link.read(buffer);
        if (event.kind != LinkEvent::Kind::bytes) break;
        out.append(reinterpret_cast<const char*>(buffer.data()), event.bytes);
    }
    return out;
}

LinkEvent readOnce(Link& link) {
    std::array<std::uint8_t, 256> buffer{};
    return link.read(buffer);
}

// What a process without rights gets when it opens the port, as the text of the error; "opened" if it may.
std::string openUnprivileged(const std::string& port) {
    int ends[2];
    if (pipe(ends) != 0) return "no pipe";
    const pid_t child = fork();
    if (child == 0) {
        if (geteuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0)) _exit(2);
        const auto link = makeSerialLink(port, {});
        const Status status = link->open();
        const std::string text = status ? "opened" : status.error().text();
        const ssize_t written = write(ends[1], text.data(), text.size());
        _exit(written > 0 ? 0 : 3);
    }
    close(ends[1]);
    std::string out(1000, '\0');
    const ssize_t count = read(ends[0], out.data(), out.size());
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    out.resize(count > 0 ? static_cast<std::size_t>(count) : 0);
    return out;
}

} // namespace

TEST(SerialLink, AppliesTheSettingsOfTheDescription) {
    KernelTty tty;
    LinkSettings settings;
    settings.baud = 2400;
    settings.bits = 7;
    settings.parity = Parity::odd;
    settings.stopBits = 2;
    settings.dtr = true;
    settings.rts = false;
    const auto link = makeSerialLink(KernelTty::kPort, settings);
    const Status opened = link->open();
    ASSERT_TRUE(opened) << opened.error().text();
    EXPECT_EQ(tty.baud(), 2400u);
    EXPECT_EQ(tty.bits(), 7);
    EXPECT_EQ(tty.parity(), 'O');
    EXPECT_EQ(tty.stopBits(), 2);
    EXPECT_TRUE(tty.dtr());
    EXPECT_FALSE(tty.rts());
}

// Every framing and every state of the lines that a description can ask for.
TEST(SerialLink, AppliesEveryFramingAndEveryStateOfTheLines) {
    KernelTty tty;
    struct Framing {
        int bits;
        Parity parity;
        char letter;
        int stopBits;
    };
    int baud = 600;
    for (const Framing& f :
         {Framing{7, Parity::even, 'E', 1}, Framing{7, Parity::odd, 'O', 1}, Framing{7, Parity::none, 'N', 2},
          Framing{8, Parity::none, 'N', 1}, Framing{8, Parity::even, 'E', 2}, Framing{8, Parity::odd, 'O', 1}})
        for (const bool dtr : {true, false})
            for (const bool rts : {true, false}) {
                baud = baud >= 115200 ? 600 : baud * 2 == 76800 ? 57600 : baud * 2;
                LinkSettings settings;
                settings.baud = baud;
                settings.bits = f.bits;
                settings.parity = f.parity;
                settings.stopBits = f.stopBits;
                settings.dtr = dtr;
                settings.rts = rts;
                const auto link = makeSerialLink(KernelTty::kPort, settings);
                const Status opened = link->open();
                ASSERT_TRUE(opened) << opened.error().text();
                const std::string what = std::to_string(baud) + " " + std::to_string(f.bits) + f.letter;
                EXPECT_EQ(tty.baud(), static_cast<unsigned>(baud)) << what;
                EXPECT_EQ(tty.bits(), f.bits) << what;
                EXPECT_EQ(tty.parity(), f.letter) << what;
                EXPECT_EQ(tty.stopBits(), f.stopBits) << what;
                EXPECT_EQ(tty.dtr(), dtr) << what;
                EXPECT_EQ(tty.rts(), rts) << what;
            }
}

TEST(SerialLink, RaisesBothLinesUnlessTold) {
    KernelTty tty;
    const auto link = makeSerialLink(KernelTty::kPort, {});
    ASSERT_TRUE(link->open());
    EXPECT_TRUE(tty.dtr());
    EXPECT_TRUE(tty.rts());
}

TEST(SerialLink, PassesEveryByteUnchangedBothWays) {
    KernelTty tty;
    const auto link = makeSerialLink(KernelTty::kPort, {});
    ASSERT_TRUE(link->open());
    std::string all;
    for (int i = 0; i < 256; ++i) all += static_cast<char>(i);
    ASSERT_TRUE(tty.send(all));
    EXPECT_EQ(readAll(*link, all.size()), all);
    const std::string command = "READ?\n";
    ASSERT_TRUE(link->write({reinterpret_cast<const std::uint8_t*>(command.data()), command.size()}));
    EXPECT_EQ(tty.receive(30'000), command);
}

TEST(SerialLink, StampsArrivalWithTheClockThatRunsThroughSleep) {
    KernelTty tty;
    const auto link = makeSerialLink(KernelTty::kPort, {});
    ASSERT_TRUE(link->open());
    const Time before = bootTime();
    ASSERT_TRUE(tty.send("4"));
    pollfd waiting{link->descriptor(), POLLIN, 0};
    ASSERT_EQ(poll(&waiting, 1, 30'000), 1);
    const LinkEvent event = readOnce(*link);
    EXPECT_GE(event.arrived, before);
    EXPECT_LE(event.arrived, bootTime());
}

TEST(SerialLink, NothingIsNoLoss) {
    KernelTty tty;
    const auto link = makeSerialLink(KernelTty::kPort, {});
    ASSERT_TRUE(link->open());
    for (int i = 0; i < 100; ++i) EXPECT_EQ(readOnce(*link).kind, LinkEvent::Kind::nothing);
}

// A pulled adapter answers poll with ready and reads with nothing; a far end that closed gives an error.
class Loss : public testing::TestWithParam<const char*> {};

TEST_P(Loss, IsToldAtOnceAndThePortOpensAgain) {
    KernelTty tty;
    const auto link = makeSerialLink(KernelTty::kPort, {});
    ASSERT_TRUE(link->open());
    const std::string how = GetParam();
    if (how == "vanish")
        tty.vanish();
    else if (how == "close")
        tty.closeSlave();
    else if (!tty.hangUp())
        tty.vanish(); // the kernel's own hang-up wants root; the lent one answers alike
    EXPECT_EQ(readOnce(*link).kind, LinkEvent::Kind::lost);
    EXPECT_EQ(link->descriptor(), -1); // closed, so that the name is free for its return
    EXPECT_FALSE(link->write({}));
    tty.setAbsent(true);
    EXPECT_FALSE(link->open());
    tty.setAbsent(false);
    ASSERT_TRUE(link->open());
    ASSERT_TRUE(tty.send("4.123"));
    EXPECT_EQ(readAll(*link, 5), "4.123");
}

INSTANTIATE_TEST_SUITE_P(SerialLink, Loss, testing::Values("hangup", "vanish", "close"));

TEST(SerialLink, SaysThatAPortIsMissing) {
    const Status status = makeSerialLink("/dev/ttyNOSUCH7", {})->open();
    ASSERT_FALSE(status);
    EXPECT_EQ(status.error().text(),
              "/dev/ttyNOSUCH7: there is no such port; plug the adapter in; \"stillwire ports\" lists what is there");
    EXPECT_EQ(status.error().kind, Error::Kind::badInput);
}

// The kernel's own refusal: the console belongs to root.
TEST(SerialLink, SaysThatAPortIsForbidden) {
    const std::string text = openUnprivileged("/dev/console");
    EXPECT_NE(text.find("/dev/console: you may not open the port"), std::string::npos) << text;
    EXPECT_NE(text.find("sudo usermod -aG dialout $USER"), std::string::npos) << text;
}

// The kernel's own refusal again: a terminal in exclusive mode. Under the name libserialport knows.
TEST(SerialLink, SaysThatAPortIsBusy) {
    const int master = posix_openpt(O_RDWR | O_NOCTTY);
    ASSERT_GE(master, 0);
    unlockpt(master);
    const std::string slaveName = ptsname(master);
    const int slave = open(slaveName.c_str(), O_RDWR | O_NOCTTY);
    ASSERT_GE(slave, 0);
    ASSERT_EQ(chmod(slaveName.c_str(), 0666), 0);
    ASSERT_EQ(ioctl(slave, TIOCEXCL), 0);
    KernelTty::redirect(slaveName);
    const std::string text = openUnprivileged(KernelTty::kPort);
    KernelTty::redirect({});
    EXPECT_NE(text.find("another program holds the port"), std::string::npos) << text;
    EXPECT_NE(text.find("sudo fuser -v /dev/ptmx"), std::string::npos) << text;
    close(slave);
    close(master);
}

// Vendors ffff and 0000 are no maker's: these adapters are nobody's.
TEST(UsbIdentity, IsReadAndWritten) {
    for (const char* text : {"ffff:0001", "ffff:0001:EXAMPLE", "ffff:0002:0:1", "0000:0a1b:x"}) {
        const auto identity = parseUsbIdentity(text);
        ASSERT_TRUE(identity) << text;
        EXPECT_EQ(identity->text(), text);
    }
    EXPECT_EQ(parseUsbIdentity("ffff:0001:A1"), (UsbIdentity{0xffff, 0x0001, "A1"}));
    for (const char* text : {"", "/dev/ttyUSB0", "fff:0001", "ffff-0001", "ffff:0001:", "ffff:000", "ffff:00011",
                             "-fff:0001", "fffg:0001"})
        EXPECT_FALSE(parseUsbIdentity(text)) << text;
}

TEST(UsbIdentity, FindsTheAdapterUnderAnyName) {
    const std::vector<PortInfo> ports = {{"/dev/ttyS0", "", std::nullopt},
                                         {"/dev/ttyUSB0", "", UsbIdentity{0xffff, 0x0001, "OTHER"}},
                                         {"/dev/ttyUSB1", "", UsbIdentity{0xffff, 0x0001, "MINE"}},
                                         {"/dev/ttyUSB2", "", UsbIdentity{0xffff, 0x0002, ""}},
                                         {"/dev/ttyUSB3", "", UsbIdentity{0xffff, 0x0002, ""}}};
    EXPECT_EQ(portOf({0xffff, 0x0001, "MINE"}, ports, "/dev/ttyUSB0", false), "/dev/ttyUSB1"); // it was renamed
    EXPECT_EQ(portOf({0xffff, 0x0002, ""}, ports, "/dev/ttyUSB3", false), "/dev/ttyUSB3");     // of two alike
    EXPECT_EQ(portOf({0xffff, 0x0002, ""}, ports, "", false), "/dev/ttyUSB2");
    EXPECT_EQ(portOf({0xffff, 0x0001, ""}, ports, "", true), "/dev/ttyUSB0"); // one of the make
    EXPECT_FALSE(portOf({0xffff, 0x0001, ""}, ports, "", false));             // none without a number
    EXPECT_FALSE(portOf({0xffff, 0x0001, "GONE"}, ports, "", false));
}

TEST(SerialLink, ByAnIdentityThatIsNotThereSaysSo) {
    const Status status = makeSerialLink("ffff:ffff:NOBODY", {})->open();
    ASSERT_FALSE(status);
    EXPECT_NE(status.error().text().find("ffff:ffff:NOBODY: there is no such port"), std::string::npos);
}

TEST(PortLock, KnowsALockFileOfAProcessThatLives) {
    const std::string directory = testing::TempDir() + "lock_" + std::to_string(getpid());
    std::filesystem::create_directory(directory);
    EXPECT_EQ(lockFileHolder("/dev/ttyUSB0", directory), "");
    std::ofstream(directory + "/LCK..ttyUSB0") << "   " << getpid() << "\n";
    EXPECT_EQ(lockFileHolder("/dev/ttyUSB0", directory), "process " + std::to_string(getpid()));
    const pid_t child = fork();
    if (child == 0) _exit(0);
    waitpid(child, nullptr, 0);
    std::ofstream(directory + "/LCK..ttyUSB0") << child << "\n"; // left behind
    EXPECT_EQ(lockFileHolder("/dev/ttyUSB0", directory), "");
    std::filesystem::remove_all(directory);
}

TEST(PortLock, KeepsASecondReaderOut) {
    const std::string file = testing::TempDir() + "port_" + std::to_string(getpid());
    std::ofstream(file) << "x";
    const int first = open(file.c_str(), O_RDWR), second = open(file.c_str(), O_RDWR);
    EXPECT_TRUE(claimPort(first));
    EXPECT_FALSE(claimPort(second));
    close(first);
    EXPECT_TRUE(claimPort(second));
    close(second);
    std::remove(file.c_str());
}

} // namespace stillwire
