// SPDX-License-Identifier: GPL-3.0-or-later
// Fixed-length ASCII digits with range, function and status characters, as the description's layout places them.
#pragma once

#include "meters/decode/line_decoder.hpp"
#include "meters/describe/description.hpp"

namespace stillwire {

class AsciiDecoder final : public LineDecoder {
public:
    explicit AsciiDecoder(AsciiLayout layout) : layout_(std::move(layout)) {}

    [[nodiscard]] NotVolts notVolts() const override { return notVolts_; }

protected:
    Sentence line(std::string_view text, Time arrived, std::vector<Reading>& out) override;

private:
    AsciiLayout layout_;
    NotVolts notVolts_ = NotVolts::unsaid;
};

} // namespace stillwire
