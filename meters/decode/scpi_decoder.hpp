// SPDX-License-Identifier: GPL-3.0-or-later
// Replies of a SCPI instrument: NRf numbers (IEEE 488.2), several joined by ',' or ';'. By the numeric rule of
// SCPI-1999's infinity and not-a-number: |v| >= 9.905e37 is not a number, from 9.895e37 overload. Answers to `*IDN?`
// and `SYST:ERR?` are no readings and no garbage: takeAnswer().
#pragma once

#include "meters/decode/line_decoder.hpp"

#include <utility>

namespace stillwire {

class ScpiDecoder final : public LineDecoder {
public:
    std::optional<Answer> takeAnswer() override { return std::exchange(answer_, std::nullopt); }

protected:
    Sentence line(std::string_view text, Time arrived, std::vector<Reading>& out) override;

private:
    std::optional<Answer> answer_;
};

} // namespace stillwire
