// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace stillwire {

namespace {

template <std::size_t N> bool isOneOf(std::string_view word, const std::array<std::string_view, N>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool startsWith(std::string_view text, std::string_view start) { return text.substr(0, start.size()) == start; }

// Bases other than volts, as meters print them; Ω in both of its code points.
constexpr std::array<std::string_view, 20> kOtherBases = {"A",
                                                          "ADC",
                                                          "AAC",
                                                          "OHM",
                                                          "OHMS",
                                                          "Ohm",
                                                          "Ohms",
                                                          "ohm",
                                                          "ohms",
                                                          "\xCE\xA9",
                                                          "F",
                                                          "Hz",
                                                          "HZ",
                                                          "%",
                                                          "W",
                                                          "\xE2\x84\xA6",
                                                          "S",
                                                          "\xC2\xB0"
                                                          "C",
                                                          "\xC2\xB0"
                                                          "F",
                                                          "dB"};
constexpr std::array<std::string_view, 4> kDcVolts = {"V", "VDC", "Vdc", "V="};
constexpr std::array<std::string_view, 5> kAcVolts = {"VAC", "Vac", "V~", "Vrms", "VACDC"};

// Written µ in UTF-8 (two code points look alike), in Latin-1, or as u.
constexpr std::array<std::pair<std::string_view, int>, 10> kPrefixes = {{{"\xC2\xB5", -6},
                                                                         {"\xCE\xBC", -6},
                                                                         {"\xB5", -6},
                                                                         {"u", -6},
                                                                         {"n", -9},
                                                                         {"p", -12},
                                                                         {"m", -3},
                                                                         {"k", 3},
                                                                         {"K", 3},
                                                                         {"M", 6}}};

Unit withoutPrefix(std::string_view base) {
    if (isOneOf(base, kDcVolts)) return {true, true, 0};
    if (isOneOf(base, kAcVolts) || isOneOf(base, kOtherBases)) return {true, false, 0};
    return {};
}

} // namespace

std::string upperCase(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return out;
}

Unit parseUnit(std::string_view token) {
    if (Unit unit = withoutPrefix(token); unit.known) return unit;
    for (const auto& [prefix, exponent] : kPrefixes) {
        if (!startsWith(token, prefix)) continue;
        Unit unit = withoutPrefix(token.substr(prefix.size()));
        // No sensor gives megavolts, and a capital M for milli would be a thousand million times wrong.
        if (unit.dcVolts && exponent > 3) return {};
        unit.exponent10 = exponent;
        if (unit.known) return unit;
    }
    return {};
}

bool isOverloadWord(std::string_view token) {
    if (!token.empty() && (token.front() == '+' || token.front() == '-')) token.remove_prefix(1);
    std::string bare = upperCase(token);
    bare.erase(std::remove(bare.begin(), bare.end(), '.'), bare.end());
    constexpr std::array<std::string_view, 6> words = {"OL", "0L", "OVL", "OVLD", "OVERLOAD", "OVERFLOW"};
    return isOneOf(std::string_view(bare), words);
}

std::optional<FrameWord> parseStateWord(std::string_view token) {
    const std::string word = upperCase(token);
    constexpr std::array<std::string_view, 4> hold = {"HOLD", "DH", "MIN", "MAX"};
    constexpr std::array<std::string_view, 4> lowBattery = {"LOBAT", "LOWBAT", "BATT", "BAT"};
    constexpr std::array<std::string_view, 2> autoRange = {"AUTO", "AUTORANGE"};
    constexpr std::array<std::string_view, 6> plainWords = {"DC", "DCV", "MANU", "MANUAL", "RANGE", "="};
    constexpr std::array<std::string_view, 2> other = {"DIODE", "CONT"};
    constexpr std::array<std::string_view, 4> alternating = {"AC", "ACV", "~", "AC+DC"};
    constexpr std::array<std::string_view, 4> relative = {"REL", "DELTA", "\xCE\x94", "ZERO"};
    constexpr std::array<std::string_view, 3> lowImpedance = {"LOZ", "LOWZ", "LO-Z"};
    if (isOneOf(std::string_view(word), hold)) return FrameWord{Flag::hold, false, NotVolts::unsaid};
    if (isOneOf(std::string_view(word), lowBattery)) return FrameWord{Flag::lowbat, false, NotVolts::unsaid};
    if (isOneOf(std::string_view(word), autoRange)) return FrameWord{Flag::autorange, false, NotVolts::unsaid};
    if (isOneOf(std::string_view(word), plainWords)) return FrameWord{};
    if (isOneOf(std::string_view(word), other)) return FrameWord{{}, true, NotVolts::unsaid};
    if (isOneOf(std::string_view(word), alternating)) return FrameWord{{}, true, NotVolts::alternating};
    if (isOneOf(std::string_view(word), relative)) return FrameWord{{}, true, NotVolts::relative};
    if (isOneOf(std::string_view(word), lowImpedance)) return FrameWord{{}, true, NotVolts::lowImpedance};
    return std::nullopt;
}

bool isDcVoltsFunction(std::string_view function) {
    std::string word;
    for (const char c : upperCase(function))
        if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) word += c;
    constexpr std::array<std::string_view, 9> dc = {"",     "V",     "DC",     "DCV",      "VDC",
                                                    "VOLT", "VOLTS", "VOLTDC", "DCVOLTAGE"};
    constexpr std::array<std::string_view, 3> alsoDc = {"VOLTAGE", "VOLTAGEDC", "MVDC"};
    return isOneOf(std::string_view(word), dc) || isOneOf(std::string_view(word), alsoDc);
}

} // namespace stillwire
