// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/past.hpp"

#include <algorithm>

namespace stillwire {

int Past::add(const Segment& segment) {
    int index = 0;
    if (free_.empty()) {
        index = static_cast<int>(all_.size());
        all_.push_back(segment);
    } else {
        index = free_.back();
        free_.pop_back();
        all_[static_cast<std::size_t>(index)] = segment;
    }
    at(index).users = 0;
    use(segment.before);
    return index;
}

void Past::drop(int index) {
    while (index >= 0 && --at(index).users == 0) {
        free_.push_back(index);
        index = at(index).before;
    }
}

void Past::cut(int index) {
    const int before = at(index).before;
    at(index).before = -1;
    drop(before);
}

void Past::chain(int newest, std::vector<int>& out) const {
    out.clear();
    for (int i = newest; i >= 0; i = at(i).before) out.push_back(i);
    std::reverse(out.begin(), out.end());
}

} // namespace stillwire
