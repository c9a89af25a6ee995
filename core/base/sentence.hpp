// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence with its figures apart from its words, so that the window can translate the words and every output
// agrees on the figures. `pattern` is English with %1 %2 … for the arguments, and has static storage.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace stillwire {

struct Argument;

struct Sentence {
    const char* pattern = "";
    std::vector<Argument> arguments;

    Sentence();
    Sentence(const char* pattern, std::vector<Argument> arguments);
    template <std::size_t N> Sentence(const char (&literal)[N]);
    template <std::size_t N> Sentence(char (&buffer)[N]) = delete; // would not outlive its scope

    [[nodiscard]] bool empty() const { return *pattern == '\0'; }
    [[nodiscard]] std::string english() const;

    friend bool operator==(const Sentence& a, const Sentence& b) { return a.english() == b.english(); }
};

// What fills a place of a sentence: a figure, the same in every language; a name (of a position, of a step), which
// whoever translates may know; or a sentence of its own.
struct Argument {
    enum class Kind { figure, name, sentence };

    Argument(std::string figure) : text(std::move(figure)) {}
    Argument(const char* figure) : text(figure) {}
    Argument(Sentence inner) : kind(Kind::sentence), sentence{std::move(inner)} {}

    Kind kind = Kind::figure;
    std::string text;               // of a figure or a name
    std::vector<Sentence> sentence; // of a sentence: the one
};
[[nodiscard]] Argument byName(std::string text);

inline Sentence::Sentence() = default;
inline Sentence::Sentence(const char* words, std::vector<Argument> filled)
    : pattern(words), arguments(std::move(filled)) {}
template <std::size_t N> Sentence::Sentence(const char (&literal)[N]) : pattern(literal) {}

// Words that come from outside and are the same in every language: the system's, a library's.
[[nodiscard]] Sentence verbatim(std::string text);

// `pattern` with %1 … %9 replaced; "%%" is a percent sign; a placeholder without its argument stays as written.
[[nodiscard]] std::string fill(const std::string& pattern, const std::vector<std::string>& arguments);

// Figures as people read them, with a point in every language, as meters and captures show them:
// volts(4.2134, 2) = "4.21 V", seconds(1.44) = "1.4 s".
[[nodiscard]] std::string volts(double value_V, int decimals = 2);
[[nodiscard]] std::string seconds(double value_s);
// For what must not claim more than it knows: rounded up, to a hundredth of a second, to a whole percent.
[[nodiscard]] std::string secondsAtMost(double value_s);
[[nodiscard]] std::string percentAtMost(double share);
[[nodiscard]] std::string plain(double value, int decimals);

} // namespace stillwire
