// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/text_encoding.hpp"

#include <gtest/gtest.h>

namespace stillwire {
namespace {

std::string decoded(const std::string& bytes, std::size_t block, std::string* name = nullptr) {
    TextEncoding encoding(bytes);
    if (name) *name = encoding.name();
    std::string out;
    for (std::size_t at = 0; at < bytes.size(); at += block) encoding.decode(bytes.substr(at, block), out);
    return out;
}

std::string wide(const std::string& text, bool big) {
    std::string out;
    for (const char c : text) out += big ? std::string{'\0', c} : std::string{c, '\0'};
    return out;
}

} // namespace

TEST(TextEncoding, WideTextIsReadWhereverItIsCut) {
    for (const std::size_t block : {1U, 3U, 1000U}) {
        std::string name;
        EXPECT_EQ(decoded(wide("Time,V\n0,4.5\n", false), block, &name), "Time,V\n0,4.5\n");
        EXPECT_EQ(name, "UTF-16LE");
        EXPECT_EQ(decoded(wide("Time,V\n0,4.5\n", true), block, &name), "Time,V\n0,4.5\n");
        EXPECT_EQ(name, "UTF-16BE");
        EXPECT_EQ(decoded("\xFF\xFE" + wide("a\xB5", false), block), "\xEF\xBB\xBF"
                                                                     "a\xC2\xB5");
    }
}

TEST(TextEncoding, OneByteACharacterIsReadAsSuch) {
    std::string name;
    EXPECT_EQ(decoded("Tensi\xF3n \x92\n", 2, &name), "Tensi\xC3\xB3n \xE2\x80\x99\n");
    EXPECT_EQ(name, "WINDOWS-1252");
    EXPECT_EQ(decoded("a\x81"
                      "b\n",
                      1),
              "a\xEF\xBF\xBD"
              "b\n"); // no character there
}

TEST(TextEncoding, LoneReturnsBecomeLineEndsAndNothingElseIsTouched) {
    EXPECT_EQ(decoded("a\rb\r", 1), "a\nb\n");
    EXPECT_TRUE(TextEncoding("a\r\nb\r\n").untouched());
    EXPECT_TRUE(TextEncoding("Tensi\xC3\xB3n\n").untouched());
    EXPECT_TRUE(TextEncoding("").untouched());
}

} // namespace stillwire
