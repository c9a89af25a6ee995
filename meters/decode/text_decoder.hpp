// SPDX-License-Identifier: GPL-3.0-or-later
// Text lines, sent freely or on a poll: by a pattern, or the first number in the line with its unit and state words.
#pragma once

#include "meters/decode/line_decoder.hpp"
#include "meters/decode/pattern.hpp"

#include <optional>

namespace stillwire {

class TextDecoder final : public LineDecoder {
public:
    TextDecoder(std::optional<LinePattern> pattern, bool decimalComma)
        : pattern_(std::move(pattern)), decimalComma_(decimalComma) {}

    [[nodiscard]] NotVolts notVolts() const override { return notVolts_; }

protected:
    Sentence line(std::string_view text, Time arrived, std::vector<Reading>& out) override;

private:
    std::optional<LinePattern> pattern_;
    bool decimalComma_;
    NotVolts notVolts_ = NotVolts::unsaid;
};

} // namespace stillwire
