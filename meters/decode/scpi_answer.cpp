// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/scpi_answer.hpp"

#include <algorithm>
#include <charconv>

namespace stillwire {

namespace {

constexpr std::size_t kLongestErrorText = 255;
constexpr int kFields = 4; // of an identity

bool isLetter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }
bool isPrintable(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; });
}

std::optional<Answer> parseError(std::string_view line) {
    Answer out{Answer::Kind::error, 0, std::string(line)};
    const char* begin = line.data() + (line.front() == '+' ? 1 : 0);
    const auto [end, fault] = std::from_chars(begin, line.data() + line.size(), out.code);
    if (fault != std::errc{} || out.code < -32768 || out.code > 32767) return std::nullopt;
    std::string_view rest = line.substr(static_cast<std::size_t>(end - line.data()));
    if (rest.size() < 3 || rest.front() != ',') return std::nullopt;
    rest.remove_prefix(1);
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    if (rest.size() < 2 || rest.size() > kLongestErrorText + 2 || rest.front() != '"' || rest.back() != '"')
        return std::nullopt;
    return out;
}

std::optional<Answer> parseIdentity(std::string_view line) {
    if (std::count(line.begin(), line.end(), ',') != kFields - 1) return std::nullopt;
    const std::string_view maker = line.substr(0, line.find(','));
    // A torn list of numbers is nobody's name.
    if (!std::any_of(maker.begin(), maker.end(), isLetter) || !isLetter(maker.front())) return std::nullopt;
    return Answer{Answer::Kind::identity, 0, std::string(line)};
}

} // namespace

std::optional<Answer> parseScpiAnswer(std::string_view line) {
    if (line.empty() || !isPrintable(line)) return std::nullopt;
    if (auto error = parseError(line)) return error;
    return parseIdentity(line);
}

} // namespace stillwire
