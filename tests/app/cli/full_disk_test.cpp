// SPDX-License-Identifier: GPL-3.0-or-later
// A capture whose file may not grow: a limit of the process stands in for the full disk, which takes a mount to make.
#include "tests/app/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire::testing {
namespace {

using ::testing::HasSubstr;

// Blocks of 512 bytes; writing beyond fails instead of ending the program.
std::string limited(int blocks) {
    return "sh -c 'ulimit -f " + std::to_string(blocks) + "; trap \"\" XFSZ; exec \"$@\"' sh";
}

TEST(FullDisk, ASimulatedRunThatIsNotWholeIsSaid) {
    const Folder f;
    const Ran r = run({"simulate", "--guided", "--script", "worn-cold", "-o", f.path("run.csv")},
                      "XDG_DATA_HOME=" + f.path("data") + " " + limited(20));
    EXPECT_EQ(r.status, 3);
    EXPECT_EQ(r.errLines(), 1) << r.err;
    EXPECT_THAT(r.err, HasSubstr("run.csv: the capture may not be whole"));
    EXPECT_THAT(r.err, HasSubstr("record again elsewhere")); // for nothing else may grow either
    const Ran opened = run({"analyse", f.path("run.csv")});  // what is there opens
    EXPECT_EQ(opened.status, 0) << opened.err;
    EXPECT_FALSE(f.read("run.csv").empty());
}

TEST(FullDisk, ASimulatedRunWithRoomSaysNothingOfIt) {
    const Folder f;
    const Ran r = run({"simulate", "--guided", "--script", "worn-cold", "-o", f.path("run.csv")}, limited(4000));
    EXPECT_EQ(r.status, 0) << r.err;
    EXPECT_EQ(r.err, "");
}

} // namespace
} // namespace stillwire::testing
