// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers as loggers and spreadsheets write them. Which sign stands before the decimals is found out from all cells
// of a file together: as long as both are possible and a cell would be another number under each, it is not taken.
#pragma once

#include "core/base/result.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace stillwire {

// No-break and thin spaces, typographic apostrophes and minus signs become plain ones.
void plainSigns(std::string& cell);

enum class DecimalSign { point, comma };

// The number at the front of a cell, as a plain decimal, and what follows it: "4'100.5 mV" is "4100.5" and "mV".
struct WrittenNumber {
    std::string plain;
    std::string_view rest; // trimmed
};
// Nothing if it is no number under `sign`. Thousands may be set apart by the other sign, spaces or apostrophes.
[[nodiscard]] std::optional<WrittenNumber> writtenNumber(std::string_view cell, DecimalSign sign);

class NumberStyle {
public:
    NumberStyle() = default;
    explicit NumberStyle(std::optional<bool> decimalComma);

    // Rules out a sign under which this cell is no number while it is one under the other. A cell that is none under
    // either teaches nothing.
    void learn(std::string_view cell);
    void ruleOut(DecimalSign sign);
    [[nodiscard]] bool possible(DecimalSign sign) const { return sign == DecimalSign::point ? point_ : comma_; }
    // The sign that is certain; nothing as long as none is.
    [[nodiscard]] std::optional<DecimalSign> certain() const;
    // True if the cell is one number under the point and another under the comma, and both are still possible.
    [[nodiscard]] bool twoReadings(std::string_view cell) const;
    // Under the signs that are possible; the caller has asked twoReadings().
    [[nodiscard]] std::optional<WrittenNumber> read(std::string_view cell) const;

private:
    bool point_ = true, comma_ = true;
};

} // namespace stillwire
