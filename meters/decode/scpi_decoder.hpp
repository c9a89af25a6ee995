// SPDX-License-Identifier: GPL-3.0-or-later
// Replies of a SCPI instrument: NRf numbers (IEEE 488.2), several joined by ',' or ';'. By the numeric rule of
// SCPI-1999's infinity and not-a-number: |v| >= 9.905e37 is not a number, from 9.895e37 overload.
#pragma once

#include "meters/decode/line_decoder.hpp"

namespace stillwire {

class ScpiDecoder final : public LineDecoder {
protected:
    std::string line(std::string_view text, Time arrived, std::vector<Reading>& out) override;
};

} // namespace stillwire
