// SPDX-License-Identifier: GPL-3.0-or-later
// A line pattern with the named groups value, unit, function and flags. RE2: linear time, whatever the bytes.
#pragma once

#include "core/base/result.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

struct PatternMatch {
    std::string_view value;
    std::optional<std::string_view> unit, function, flags; // absent: the pattern has no such group
};

class LinePattern {
public:
    // The error says what RE2 says; the caller adds file and line.
    [[nodiscard]] static Result<LinePattern> compile(const std::string& pattern);
    LinePattern(LinePattern&&) noexcept;
    LinePattern& operator=(LinePattern&&) noexcept;
    ~LinePattern();

    // Found anywhere in the line. The views point into it.
    [[nodiscard]] std::optional<PatternMatch> match(std::string_view line) const;

private:
    LinePattern();
    struct Compiled;
    std::unique_ptr<Compiled> compiled_;
};

} // namespace stillwire
