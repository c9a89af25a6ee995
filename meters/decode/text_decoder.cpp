// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/text_decoder.hpp"

#include "meters/decode/decimal.hpp"
#include "meters/decode/words.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

bool isLetter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }
bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isSeparator(char c) { return c == ' ' || c == '\t' || c == ',' || c == ';' || c == ':' || c == '='; }

bool hasControls(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && c != '\t') || byte == 0x7F;
    });
}

// What the words of a line come to.
struct Words {
    std::string_view number;
    bool overload = false;
    bool notDcVolts = false;
    NotVolts because = NotVolts::unsaid;
    Unit unit{true, true, 0};
    ReadingFlags flags;
    std::string_view strange; // right after the number, and no unit we know
};

Reading reading(Time arrived, const Words& words, std::optional<double> volts) {
    Reading out{.time = arrived, .flags = words.flags};
    if (words.notDcVolts || !words.unit.dcVolts)
        out.flags |= Flag::unit;
    else if (words.overload)
        out.flags |= Flag::overload;
    else if (volts)
        out.volts_V = *volts;
    return out;
}

std::string_view nextToken(std::string_view text, std::size_t& at) {
    while (at < text.size() && isSeparator(text[at])) ++at;
    const std::size_t begin = at;
    while (at < text.size() && !isSeparator(text[at])) ++at;
    return text.substr(begin, at - begin);
}

void takeState(const FrameWord& state, Words& words) {
    words.flags |= state.flags;
    words.notDcVolts = words.notDcVolts || state.notDcVolts;
    if (state.because != NotVolts::unsaid) words.because = state.because;
}

void takeUnit(std::string_view token, Words& words) {
    const Unit unit = parseUnit(token);
    if (unit.known)
        words.unit = unit;
    else
        words.strange = token;
}

// Takes the words of a line one by one; the first that begins like a number is the number, the next may be its unit.
Words readWords(std::string_view text) {
    Words words;
    bool afterNumber = false;
    for (std::size_t at = 0; at < text.size();) {
        const std::string_view token = nextToken(text, at);
        if (token.empty()) break;
        const bool mayBeUnit = afterNumber;
        afterNumber = false;
        if (const auto state = parseStateWord(token)) {
            takeState(*state, words);
            continue;
        }
        const bool seen = !words.number.empty() || words.overload;
        if (!seen && isOverloadWord(token)) {
            words.overload = true;
            afterNumber = true;
        } else if (const std::size_t length = seen ? 0 : decimalLength(token); length > 0) {
            words.number = token.substr(0, length);
            if (length < token.size()) takeUnit(token.substr(length), words);
            afterNumber = length == token.size();
        } else if (mayBeUnit && (isLetter(token.front()) || !isDigit(token.front()))) {
            takeUnit(token, words);
        }
    }
    return words;
}

std::string withPoint(std::string_view text) {
    std::string out(text);
    std::replace(out.begin(), out.end(), ',', '.');
    return out;
}

// By the pattern's groups. A group the pattern lacks says nothing against DC volts.
Words fromMatch(const PatternMatch& match) {
    Words words;
    std::string_view value = match.value;
    while (!value.empty() && isSeparator(value.front())) value.remove_prefix(1);
    while (!value.empty() && isSeparator(value.back())) value.remove_suffix(1);
    words.overload = isOverloadWord(value);
    if (!words.overload) words.number = value;
    std::size_t at = 0;
    if (match.unit) {
        const std::string_view unit = nextToken(*match.unit, at);
        if (!unit.empty()) takeUnit(unit, words);
    }
    if (match.function && !isDcVoltsFunction(*match.function)) {
        words.notDcVolts = true;
        if (const auto state = parseStateWord(*match.function)) words.because = state->because;
    }
    at = 0;
    while (match.flags && at < match.flags->size()) {
        if (const auto state = parseStateWord(nextToken(*match.flags, at))) takeState(*state, words);
    }
    return words;
}

} // namespace

Sentence TextDecoder::line(std::string_view text, Time arrived, std::vector<Reading>& out) {
    if (hasControls(text)) return {"not text: %1; check the baud rate", {quoteLine(text)}};
    Words words;
    std::string pointed;
    if (pattern_) {
        const auto match = pattern_->match(text);
        if (!match) return {"the pattern does not find %1", {quoteLine(text)}};
        words = fromMatch(*match);
        if (decimalComma_) {
            pointed = withPoint(words.number);
            words.number = pointed;
        }
    } else {
        pointed = decimalComma_ ? withPoint(text) : std::string(text);
        words = readWords(pointed);
        if (words.number.empty() && !words.overload) return {"no number in %1", {quoteLine(text)}};
    }
    if (!words.strange.empty()) return {"a unit that is not known: %1", {quoteLine(text)}};
    std::optional<double> volts;
    if (!words.overload) {
        volts = parseDecimal(words.number, words.unit.exponent10);
        if (!volts) return {"no number in %1", {quoteLine(text)}};
        if (words.unit.dcVolts && !(std::abs(*volts) < kLargestVolts_V))
            return {"too large for volts: %1", {quoteLine(text)}};
    }
    notVolts_ = words.because;
    out.push_back(reading(arrived, words, volts));
    return {};
}

} // namespace stillwire
