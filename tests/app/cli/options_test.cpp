// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/options.hpp"

#include <vector>

#include <gtest/gtest.h>

namespace stillwire::testing {

namespace {

Options parsed(std::vector<std::string> words) {
    words.insert(words.begin(), "stillwire");
    std::vector<char*> argv;
    for (std::string& w : words) argv.push_back(w.data());
    argv.push_back(nullptr);
    const Parsed p = parseOptions(static_cast<int>(words.size()), argv.data());
    EXPECT_FALSE(p.exit.has_value());
    return p.options;
}

} // namespace

TEST(Options, RecordLeadsUnlessToldNotTo) {
    EXPECT_TRUE(parsed({"record", "--port", "p", "-o", "o"}).guided.value_or(true));
    EXPECT_FALSE(parsed({"record", "--port", "p", "-o", "o", "--no-guide"}).guided.value_or(true));
}

TEST(Options, RecordTakesASecondMeter) {
    const Options o = parsed({"record", "--port", "ffff:0001:A1", "-o", "o", "--reference-port", "/dev/ttyUSB1"});
    EXPECT_EQ(o.port, "ffff:0001:A1");
    EXPECT_EQ(o.referencePort, "/dev/ttyUSB1");
    EXPECT_EQ(o.referenceMeter, ""); // as the first one's
}

TEST(Options, SimulateFollowsItsScriptUnlessGuided) {
    EXPECT_FALSE(parsed({"simulate", "-o", "o"}).guided.value_or(false));
    EXPECT_TRUE(parsed({"simulate", "-o", "o", "--guided"}).guided.value_or(false));
}

TEST(Options, ImportTakesADelimiterAndAComma) {
    const Options o = parsed({"analyse", "f", "--delimiter", ";", "--decimal-comma"});
    EXPECT_EQ(o.import.delimiter, ';');
    EXPECT_EQ(o.import.decimalComma, true);
    EXPECT_FALSE(parsed({"analyse", "f"}).import.decimalComma.has_value());
}

TEST(Options, FileNamesMayLookLikeAnything) { EXPECT_EQ(parsed({"analyse", "--", "-odd.csv"}).file, "-odd.csv"); }

} // namespace stillwire::testing
