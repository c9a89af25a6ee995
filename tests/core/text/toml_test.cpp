// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/toml.hpp"

#include <chrono>
#include <cmath>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

TomlNode parsed(const std::string& text) {
    auto root = parseToml(text, "test.toml");
    EXPECT_TRUE(root.ok()) << (root.ok() ? "" : root.error().text());
    return root.ok() ? *root : TomlNode{};
}

} // namespace

TEST(Toml, KeepsIntegersAndFloatsApartAndReadsBothAsNumbers) {
    const TomlNode root = parsed("a = 5\nb = 5.0\nc = \"5\"\n");
    EXPECT_TRUE(std::holds_alternative<std::int64_t>(root.find("a")->value));
    EXPECT_TRUE(std::holds_alternative<double>(root.find("b")->value));
    double number = 0;
    EXPECT_TRUE(root.find("a")->number(number));
    EXPECT_EQ(number, 5);
    EXPECT_FALSE(root.find("c")->number(number));
    EXPECT_EQ(root.find("d"), nullptr);
}

TEST(Toml, KnowsTheLineOfEachValueAndOfAnError) {
    EXPECT_EQ(parsed("a = 1\n\n[t]\nb = 2\n").find("t")->find("b")->line, 4);
    const auto broken = parseToml("a = 1\nb = = 2\n", "x.toml");
    ASSERT_FALSE(broken.ok());
    EXPECT_EQ(broken.error().line, 2);
    EXPECT_EQ(broken.error().where, "x.toml");
}

TEST(Toml, KeepsDatesAsText) {
    const TomlNode root = parsed("a = 2026-03-01T10:00:00.25+01:00\nb = 2026-03-01\nc = 07:32:00\n");
    EXPECT_EQ(root.find("a")->date()->text, "2026-03-01T10:00:00.25+01:00");
    EXPECT_EQ(root.find("b")->date()->text, "2026-03-01");
    EXPECT_EQ(root.find("c")->date()->text, "07:32:00");
}

TEST(Toml, WritesWhatReadsBackTheSame) {
    const std::string text =
        "a = [1, 2.5, [\"x\", true], { k = -0.0 }]\n"
        "\"odd key\" = \"tab\\t quote\\\" line\\n bell\\u0007 é\"\n"
        "d = 1979-05-27T07:32:00Z\n"
        "[t]\nempty = []\nbig = 1e300\nwhole = 5.0\nnothing = inf\n"
        "[t.inner]\n[[t.list]]\nn = 1\n[t.list.deep]\nx = 9223372036854775807\n[[t.list]]\n[z]\n";
    const std::string once = writeToml(parsed(text), "");
    EXPECT_EQ(writeToml(parsed(once), ""), once);
    const TomlNode again = parsed(once);
    EXPECT_EQ(*again.find("odd key")->string(), "tab\t quote\" line\n bell\x07 é");
    EXPECT_EQ(again.find("t")->find("list")->array()->size(), 2U);
    EXPECT_EQ(std::get<std::int64_t>(again.find("t")->find("list")->array()->front().find("deep")->find("x")->value),
              9223372036854775807);
    EXPECT_TRUE(std::holds_alternative<double>(again.find("t")->find("whole")->value));
    EXPECT_TRUE(std::isinf(std::get<double>(again.find("t")->find("nothing")->value)));
    EXPECT_NE(again.find("z")->table(), nullptr);
}

TEST(Toml, PutsATableOneLevelDown) {
    EXPECT_EQ(writeToml(parsed("name = \"a\"\n[reference]\nx = 1\n[[position]]\ny = 2\n"), "sheet"),
              "[sheet]\nname = \"a\"\n[[sheet.position]]\ny = 2\n[sheet.reference]\nx = 1\n");
}

TEST(Toml, RefusesNestingThatWouldEndTheStack) {
    std::string dots = "a", brackets = "x = ";
    for (int i = 0; i < 100'000; ++i) dots += ".a";
    brackets += std::string(100'000, '[');
    EXPECT_FALSE(parseToml(dots + " = 1\n", "deep").ok());
    EXPECT_FALSE(parseToml("[" + dots + "]\n", "deep").ok());
    EXPECT_FALSE(parseToml(brackets, "deep").ok());
    std::string tables = "a = 1";
    for (int i = 0; i < 100; ++i) tables = "t.u.v = { " + tables + " }";
    EXPECT_FALSE(parseToml(tables, "deep").ok());
}

TEST(Toml, ALongHostileTextIsReadOrRefusedInGoodTime) {
    std::string tables, keys, lists;
    for (int i = 0; i < 100'000; ++i) {
        tables += "[[t" + std::to_string(i % 7) + ".u]]\n";
        keys += "k" + std::to_string(i) + " = 1\n";
        lists += "[a.b" + std::to_string(i) + "]\n";
    }
    const auto start = std::chrono::steady_clock::now();
    for (const std::string& text : {tables, keys, lists, "x = [" + std::string(1'000'000, ',') + "]"}) {
        static_cast<void>(parseToml(text, "hostile"));
    }
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(30));
}

TEST(Toml, DotsInsideStringsAndListsAreNoNesting) {
    EXPECT_TRUE(
        parseToml("a = \"" + std::string(500, '.') + "\"\nb = '''\n" + std::string(500, '.') + "\n'''\n", "").ok());
    std::string list = "a = [0.5";
    for (int i = 0; i < 500; ++i) list += ", 0.5";
    EXPECT_TRUE(parseToml(list + "]\n", "").ok());
}

} // namespace stillwire
