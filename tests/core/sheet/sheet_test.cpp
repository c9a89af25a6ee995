// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/from_toml.hpp"
#include "core/sheet/sheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using testing::HasSubstr;

const std::string kWhole = R"(format = 1
name = "Resurfacer drive pedal"
source = "invented for this test"
[reference]
nominal_V = 5.0
min_V = 4.75
max_V = 5.25
[ground]
max_drop_V = 0.10
[[position]]
name = "released"
rest = true
min_V = 0.70
max_V = 0.95
aim_V = 0.82
[[position]]
name = "pressed"
min_V = 3.90
max_V = 4.30
[adjustment]
drift_allowance_V = 0.05
[wiggle]
play_V = 0.04
fault_share = 0.2
fault_depth_V = 0.4
fault_level_share = 0.7
[drive]
none_at_V = 1.10
full_at_V = 3.60
debounce_s = 0.05
[cautions]
text = ["Chock the wheels."]
)";

std::string swapped(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

struct Bad {
    const char* name;
    std::string from, to;
    int line;
    std::string says;
    friend void PrintTo(const Bad& bad, std::ostream* out) { *out << bad.to; }
};

class BrokenSheet : public testing::TestWithParam<Bad> {};

} // namespace

TEST(Sheet, ReadsEveryKey) {
    auto sheet = parseSheet(kWhole, "pedal.toml");
    ASSERT_TRUE(sheet.ok()) << sheet.error().text();
    EXPECT_EQ(sheet->name, "Resurfacer drive pedal");
    EXPECT_EQ(sheet->source, "invented for this test");
    EXPECT_EQ(sheet->nominal_V, 5.0);
    EXPECT_EQ(sheet->reference.min_V, 4.75);
    EXPECT_EQ(sheet->reference.max_V, 5.25);
    EXPECT_EQ(sheet->maxDrop_V, 0.10);
    ASSERT_EQ(sheet->positions.size(), 2U);
    EXPECT_TRUE(sheet->positions[0].rest);
    EXPECT_EQ(sheet->positions[0].aim_V, 0.82);
    EXPECT_EQ(sheet->find("pressed")->aim_V, 0.5 * (3.90 + 4.30));
    EXPECT_EQ(sheet->find("nowhere"), nullptr);
    EXPECT_EQ(sheet->rest().name, "released");
    EXPECT_EQ(sheet->driftAllowance_V, 0.05);
    EXPECT_EQ(sheet->play_V, 0.04);
    EXPECT_EQ(sheet->referenceFault.share, 0.2);
    EXPECT_EQ(sheet->referenceFault.depth_V, 0.4);
    EXPECT_EQ(sheet->referenceFault.levelShare, 0.7);
    EXPECT_EQ(sheet->drive->fullAt_V, 3.60);
    EXPECT_EQ(sheet->cautions, std::vector<std::string>{"Chock the wheels."});
    EXPECT_EQ(sheet->toml, kWhole);
}

TEST(Sheet, FillsInWhatIsOptional) {
    auto sheet =
        parseSheet("name = \"lever\"\n[reference]\nnominal_V = 8\nmin_V = 7\nmax_V = 9\n[ground]\nmax_drop_V = 0\n"
                   "[[position]]\nname = \"a\"\nmin_V = 1\nmax_V = 2\nunknown = [1]\n"
                   "[[position]]\nname = \"b\"\nmin_V = 3\nmax_V = 4\n[mine]\nkey = 1\n",
                   "lever.toml");
    ASSERT_TRUE(sheet.ok()) << sheet.error().text();
    EXPECT_EQ(sheet->play_V, 0.08); // 1 % of 8 V
    EXPECT_EQ(sheet->rest().name, "a");
    EXPECT_FALSE(sheet->driftAllowance_V.has_value());
    EXPECT_FALSE(sheet->drive.has_value());
    EXPECT_EQ(sheet->referenceFault.share, 0.10);
}

TEST_P(BrokenSheet, IsRefusedWithItsLineAndAMend) {
    const Bad& bad = GetParam();
    const auto sheet = parseSheet(swapped(kWhole, bad.from, bad.to), "pedal.toml");
    ASSERT_FALSE(sheet.ok());
    EXPECT_EQ(sheet.error().kind, Error::Kind::badInput);
    EXPECT_EQ(sheet.error().where, "pedal.toml");
    EXPECT_EQ(sheet.error().line, bad.line) << sheet.error().text();
    EXPECT_THAT(sheet.error().what.english(), HasSubstr(bad.says));
    EXPECT_FALSE(sheet.error().mend.empty());
}

INSTANTIATE_TEST_SUITE_P(
    All, BrokenSheet,
    testing::Values(Bad{"Newer", "format = 1", "format = 2", 1, "format 2 is newer than this program reads (1)"},
                    Bad{"FormatNoNumber", "format = 1", "format = \"x\"", 1, "format"},
                    Bad{"NotToml", "name = \"Res", "name = Res", 2, "not TOML"},
                    Bad{"NoName", "name = \"Resurfacer drive pedal\"", "", 1, "name is missing"},
                    Bad{"EmptyName", "\"Resurfacer drive pedal\"", "\"\"", 2, "name"},
                    Bad{"NoReference", "[reference]", "[elsewhere]", 1, "[reference] is missing"},
                    Bad{"NoGround", "[ground]", "[elsewhere]", 1, "[ground] is missing"},
                    Bad{"NoNominal", "nominal_V = 5.0", "", 4, "nominal_V is missing"},
                    Bad{"NominalOutside", "nominal_V = 5.0", "nominal_V = 6.0", 5, "nominal_V lies outside"},
                    Bad{"ReferenceCrossed", "min_V = 4.75", "min_V = 5.75", 6, "crossed"},
                    Bad{"NegativeDrop", "max_drop_V = 0.10", "max_drop_V = -0.10", 9, "too low"},
                    Bad{"Crossed", "min_V = 0.70", "min_V = 0.97", 13, "crossed"},
                    Bad{"NoWidth", "min_V = 0.70", "min_V = 0.95", 13, "crossed"},
                    Bad{"MissingLimit", "max_V = 0.95", "", 10, "max_V is missing"},
                    Bad{"TextForNumber", "max_V = 0.95", "max_V = \"0.95\"", 14, "not a number"},
                    Bad{"Infinite", "max_V = 0.95", "max_V = inf", 14, "not finite"},
                    Bad{"NotANumber", "max_V = 0.95", "max_V = nan", 14, "not finite"},
                    Bad{"AboveNominal", "max_V = 4.30", "max_V = 43.0", 19, "too high"},
                    Bad{"AimOutside", "aim_V = 0.82", "aim_V = 0.99", 15, "aim_V lies outside"},
                    Bad{"SameName", "name = \"pressed\"", "name = \"released\"", 16, "two positions"},
                    Bad{"TwoRest", "name = \"pressed\"", "name = \"pressed\"\nrest = true", 18,
                        "two positions have rest"},
                    Bad{"RestNoTruth", "rest = true", "rest = 1", 12, "neither true nor false"},
                    Bad{"OnePosition", "[[position]]\nname = \"released\"", "[[other]]\nname = \"released\"", 16,
                        "fewer than two"},
                    Bad{"PositionWithoutName", "name = \"pressed\"", "", 16, "name is missing"},
                    Bad{"NoAllowance", "drift_allowance_V = 0.05", "", 20, "drift_allowance_V is missing"},
                    Bad{"NegativePlay", "play_V = 0.04", "play_V = -1", 23, "too low"},
                    Bad{"FaultShare", "fault_share = 0.2", "fault_share = 2", 24, "too high"},
                    Bad{"DriveFlat", "full_at_V = 3.60", "full_at_V = 1.10", 27, "the same"},
                    Bad{"CautionNoText", "[\"Chock the wheels.\"]", "[5]", 32, "no text"}),
    [](const auto& row) { return row.param.name; });

TEST(Sheet, RefusesMorePositionsThanAnySensorHas) {
    std::string text = kWhole;
    for (int i = 0; i < 200; ++i)
        text += "[[position]]\nname = \"p" + std::to_string(i) + "\"\nmin_V = 1\nmax_V = 2\n";
    EXPECT_FALSE(parseSheet(text, "many.toml").ok());
}

TEST(Sheet, MadeInCodeDescribesItself) {
    auto sheet = parseSheet(kWhole, "pedal.toml");
    ASSERT_TRUE(sheet.ok());
    auto again = parseSheet(describe(*sheet), "described");
    ASSERT_TRUE(again.ok()) << again.error().text();
    EXPECT_EQ(describe(*again), describe(*sheet));
    EXPECT_EQ(again->positions[0].window.min_V, 0.70);
    EXPECT_EQ(again->referenceFault.levelShare, 0.7);
}

} // namespace stillwire
