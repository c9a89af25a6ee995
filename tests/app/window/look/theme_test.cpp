// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/theme.hpp"
#include "tests/app/window/look/vision.hpp"

#include <cmath>
#include <set>
#include <vector>

#include <QDir>
#include <QFile>
#include <gtest/gtest.h>

namespace stillwire {

using namespace test;

struct Themed {
    const char* name;
    Palette palette;
};
static std::vector<Themed> bothThemes() { return {{"day", Palette::day()}, {"night", Palette::night()}}; }

// Every pair of text on a ground that the window paints: 7:1 (WCAG 2.2, 1.4.6).
struct TextPair {
    Role text, ground;
};
static const std::vector<TextPair>& textPairs() {
    static const std::vector<TextPair> pairs = [] {
        std::vector<TextPair> all;
        for (Role ground : {Role::paper, Role::page, Role::plot, Role::faultBack, Role::cautionBack, Role::hatchBack,
                            Role::quietPhase, Role::wigglePhase, Role::travelPhase, Role::band})
            all.push_back({Role::ink, ground});
        for (Role ground : {Role::paper, Role::page, Role::plot}) all.push_back({Role::quietText, ground});
        for (Role ground : {Role::paper, Role::plot, Role::page}) all.push_back({Role::trace, ground});
        for (Role ground : {Role::faultBack, Role::plot, Role::paper}) all.push_back({Role::fault, ground});
        for (Role ground : {Role::paper, Role::plot}) all.push_back({Role::good, ground});
        for (Role ground : {Role::cautionBack, Role::plot, Role::paper}) all.push_back({Role::caution, ground});
        for (Role text : {Role::barText, Role::barQuiet}) all.push_back({text, Role::bar});
        all.push_back({Role::plot, Role::trace}); // the word on a pressed button
        all.push_back({Role::loudText, Role::loud});
        all.push_back({Role::midText, Role::mid});
        return all;
    }();
    return pairs;
}

// Shapes and lines that carry meaning: 3:1 (WCAG 2.2, 1.4.11).
static const std::vector<TextPair>& shapePairs() {
    static const std::vector<TextPair> pairs = {
        {Role::trace, Role::band},          {Role::trace, Role::hatchBack},  {Role::fault, Role::band},
        {Role::strongLine, Role::plot},     {Role::strongLine, Role::page},  {Role::strongLine, Role::hatchBack},
        {Role::focus, Role::page},          {Role::focus, Role::paper},      {Role::good, Role::paper},
        {Role::caution, Role::cautionBack}, {Role::strongLine, Role::paper}, // the drawings' quiet lines
    };
    return pairs;
}

// The ends of the scale in WCAG 2.2 itself: black on white is 21:1, a colour on itself 1:1.
TEST(Vision, ContrastHasTheEndsTheStandardGives) {
    EXPECT_NEAR(contrast(QColor(Qt::black), QColor(Qt::white)), 21.0, 1e-9);
    EXPECT_NEAR(contrast(QColor("#777777"), QColor("#777777")), 1.0, 1e-9);
    // #767676 is widely given as the lightest grey that holds 4.5:1 on white, #777777 as the first that does not.
    EXPECT_GE(contrast(QColor("#767676"), QColor(Qt::white)), 4.5);
    EXPECT_LT(contrast(QColor("#777777"), QColor(Qt::white)), 4.5);
}

TEST(Vision, DeficienciesLeaveGreyAlone) {
    for (const Deficiency& d : kDeficiencies)
        for (const auto& row : d.m) EXPECT_NEAR(row[0] + row[1] + row[2], 1.0, 2e-6) << d.name;
}

TEST(Theme, EveryTextPairHoldsSevenToOne) {
    for (const auto& [name, palette] : bothThemes())
        for (const TextPair& pair : textPairs())
            EXPECT_GE(contrast(palette[pair.text], palette[pair.ground]), 7.0)
                << name << ": " << palette[pair.text].name().toStdString() << " on "
                << palette[pair.ground].name().toStdString();
}

TEST(Theme, TextHoldsUnderColourVisionDeficiencies) {
    for (const auto& [name, palette] : bothThemes())
        for (const Deficiency& d : kDeficiencies)
            for (const TextPair& pair : textPairs())
                EXPECT_GE(contrast(seenWith(d, palette[pair.text]), seenWith(d, palette[pair.ground])), 7.0)
                    << name << ", " << d.name << ": " << palette[pair.text].name().toStdString() << " on "
                    << palette[pair.ground].name().toStdString();
}

// Told apart in grey, and by every eye: at least a quarter of the way from black to white between any two.
TEST(Theme, FaultCautionAndGoodDifferInLightness) {
    const auto lightness = [](QColor c) { // CIE L*
        const double y = luminance(c);
        return y > 0.008856 ? 116 * std::cbrt(y) - 16 : 903.3 * y;
    };
    for (const auto& [name, palette] : bothThemes()) {
        const double good = lightness(palette[Role::plot]), caution = lightness(palette[Role::mid]),
                     fault = lightness(palette[Role::loud]);
        EXPECT_GT(std::abs(good - caution), 20) << name;
        EXPECT_GT(std::abs(caution - fault), 25) << name;
        EXPECT_GT(std::abs(good - fault), 60) << name;
        EXPECT_EQ(good > caution, caution > fault) << name; // in one direction
    }
}

TEST(Theme, ShapesHoldThreeToOneForEveryEye) {
    for (const auto& [name, palette] : bothThemes())
        for (const TextPair& pair : shapePairs()) {
            const auto say = [&, &theme = name](const char* eye) {
                return std::string(theme) + ", " + eye + ": " + palette[pair.text].name().toStdString() + " on " +
                       palette[pair.ground].name().toStdString();
            };
            EXPECT_GE(contrast(palette[pair.text], palette[pair.ground]), 3.0) << say("all");
            for (const Deficiency& d : kDeficiencies)
                EXPECT_GE(contrast(seenWith(d, palette[pair.text]), seenWith(d, palette[pair.ground])), 3.0)
                    << say(d.name);
        }
}

// The colour of hairlines is for frames: what a drawing shows in it is not seen, at night least of all.
TEST(Theme, NoDrawingShowsAnythingInTheColourOfHairlines) {
    const QStringList drawings = QDir(QStringLiteral(":/drawings")).entryList({QStringLiteral("*.svg")});
    ASSERT_GT(drawings.size(), 10);
    for (const QString& name : drawings) {
        QFile file(QStringLiteral(":/drawings/") + name);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
        const QByteArray hairline = Palette::day()[Role::line].name(QColor::HexRgb).toUpper().toLatin1();
        EXPECT_FALSE(file.readAll().toUpper().contains(hairline)) << name.toStdString();
    }
}

TEST(Theme, RecolouringADrawingReachesEveryRoleAndMixesNone) {
    QByteArray day;
    std::set<QString> colours;
    for (int i = 0; i < kRoleCount; ++i) {
        const QString name = Palette::day()[static_cast<Role>(i)].name().toUpper();
        EXPECT_TRUE(colours.insert(name).second) << "two roles share " << name.toStdString();
        day += name.toLatin1() + ' ';
    }
    QByteArray expected;
    for (int i = 0; i < kRoleCount; ++i) expected += Palette::night()[static_cast<Role>(i)].name().toLatin1() + ' ';
    EXPECT_EQ(Palette::night().recolour(day), expected);
}

} // namespace stillwire
