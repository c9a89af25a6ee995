// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of a capture in memory, byte for byte as in its file: what the disk has not taken, or will not give back,
// can be written elsewhere. Grows by blocks that never move.
#pragma once

#include <algorithm>
#include <cstddef>
#include <deque>
#include <string>
#include <string_view>

namespace stillwire {

class RowMemory {
public:
    void append(std::string_view rows) {
        while (!rows.empty()) {
            if (size_ % kBlock == 0) blocks_.emplace_back().reserve(kBlock);
            const std::size_t fits = std::min(kBlock - size_ % kBlock, rows.size());
            blocks_.back().append(rows.substr(0, fits));
            size_ += fits;
            rows.remove_prefix(fits);
        }
    }
    [[nodiscard]] std::size_t size() const { return size_; }
    // The bytes from `position` on, up to the end of a block; empty at the end.
    [[nodiscard]] std::string from(std::size_t position) const {
        return position < size_ ? blocks_[position / kBlock].substr(position % kBlock) : std::string();
    }

private:
    static constexpr std::size_t kBlock = 65536;
    std::deque<std::string> blocks_;
    std::size_t size_ = 0;
};

} // namespace stillwire
