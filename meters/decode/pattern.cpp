// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/decode/pattern.hpp"

#include <map>
#include <vector>

#include <re2/re2.h>

namespace stillwire {

struct LinePattern::Compiled {
    std::unique_ptr<re2::RE2> expression;
    int value = 0, unit = 0, function = 0, flags = 0; // group numbers, 0: none
    int groups = 0;
};

LinePattern::LinePattern() = default;
LinePattern::LinePattern(LinePattern&&) noexcept = default;
LinePattern& LinePattern::operator=(LinePattern&&) noexcept = default;
LinePattern::~LinePattern() = default;

Result<LinePattern> LinePattern::compile(const std::string& pattern) {
    re2::RE2::Options options;
    options.set_log_errors(false);
    options.set_encoding(re2::RE2::Options::EncodingLatin1); // bytes: a meter's µ may be any of three
    options.set_max_mem(1 << 20);
    LinePattern out;
    out.compiled_ = std::make_unique<Compiled>();
    out.compiled_->expression = std::make_unique<re2::RE2>(pattern, options);
    const re2::RE2& expression = *out.compiled_->expression;
    if (!expression.ok())
        return Error{.what = {"the pattern is not a regular expression: %1", {expression.error()}},
                     .mend = "write it in the RE2 syntax, in single quotes"};
    const std::map<std::string, int>& names = expression.NamedCapturingGroups();
    const auto group = [&names](const char* name) {
        const auto found = names.find(name);
        return found == names.end() ? 0 : found->second;
    };
    out.compiled_->value = group("value");
    out.compiled_->unit = group("unit");
    out.compiled_->function = group("function");
    out.compiled_->flags = group("flags");
    out.compiled_->groups = expression.NumberOfCapturingGroups();
    if (out.compiled_->value == 0)
        return Error{.what = "the pattern does not say which part is the value",
                     .mend = "put (?P<value>...) around it"};
    return out;
}

std::optional<PatternMatch> LinePattern::match(std::string_view line) const {
    std::vector<re2::StringPiece> groups(static_cast<std::size_t>(compiled_->groups) + 1);
    const re2::StringPiece text(line.data(), line.size());
    if (!compiled_->expression->Match(text, 0, line.size(), re2::RE2::UNANCHORED, groups.data(),
                                      static_cast<int>(groups.size())))
        return std::nullopt;
    const auto view = [&groups](int group) {
        const re2::StringPiece& piece = groups[static_cast<std::size_t>(group)];
        return piece.data() == nullptr ? std::string_view() : std::string_view(piece.data(), piece.size());
    };
    PatternMatch out;
    out.value = view(compiled_->value);
    if (compiled_->unit > 0) out.unit = view(compiled_->unit);
    if (compiled_->function > 0) out.function = view(compiled_->function);
    if (compiled_->flags > 0) out.flags = view(compiled_->flags);
    return out;
}

} // namespace stillwire
