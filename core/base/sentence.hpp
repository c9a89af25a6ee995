// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence with its figures apart from its words, so that the window can translate the words and every output
// agrees on the figures. `pattern` is English with %1 %2 … for the arguments, and has static storage.
#pragma once

#include <string>
#include <vector>

namespace stillwire {

struct Sentence {
    const char* pattern = "";
    std::vector<std::string> arguments;

    [[nodiscard]] bool empty() const { return *pattern == '\0'; }
    [[nodiscard]] std::string english() const;

    friend bool operator==(const Sentence& a, const Sentence& b) { return a.english() == b.english(); }
};

// `pattern` with %1 … %9 replaced; "%%" is a percent sign; a placeholder without its argument stays as written.
[[nodiscard]] std::string fill(const std::string& pattern, const std::vector<std::string>& arguments);

// Figures as people read them: volts(4.2134, 2) = "4.21 V", seconds(1.44) = "1.4 s".
[[nodiscard]] std::string volts(double value_V, int decimals = 2);
[[nodiscard]] std::string seconds(double value_s);
// For what must not claim more than it knows: rounded up, to a hundredth of a second, to a whole percent.
[[nodiscard]] std::string secondsAtMost(double value_s);
[[nodiscard]] std::string percentAtMost(double share);
[[nodiscard]] std::string plain(double value, int decimals);

} // namespace stillwire
