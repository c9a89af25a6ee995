// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trace/trace.hpp"

#include "core/trace/store.hpp"

#include <algorithm>

namespace stillwire {

namespace {

template <class From> void merge(TraceExtremes& into, const From& from) {
    if (from.count == 0) return;
    into.min_V = into.count == 0 ? from.min_V : std::min(into.min_V, from.min_V);
    into.max_V = into.count == 0 ? from.max_V : std::max(into.max_V, from.max_V);
    into.count += from.count;
}

void merge(TraceExtremes& into, const TracePoint& point) {
    if (point.volts_V != point.volts_V) return;
    merge(into, TraceExtremes{point.volts_V, point.volts_V, 1});
}

// The extremes of `n` points or groups from `first`.
template <class GroupType, class From> GroupType summary(const From* first, std::size_t n) {
    TraceExtremes all;
    for (std::size_t i = 0; i < n; ++i) merge(all, first[i]);
    return {all.min_V, all.max_V, all.count};
}

} // namespace

const TraceSnapshot::Store::Group& TraceSnapshot::Store::group(std::size_t index, int level) const {
    if (level == 5) return leaves[index / kLeaf]->level5;
    if (level == 4) return leaves[index / kLeaf]->level4[index % kLeaf / kSize[4]];
    const Chunk& chunk = chunkOf(index);
    const std::size_t inChunk = index % kChunk;
    if (level == 3) return chunk.level3;
    return level == 2 ? chunk.level2[inChunk / kSize[2]] : chunk.level1[inChunk / kSize[1]];
}

void TraceSnapshot::Store::append(TracePoint point) {
    const std::size_t index = count.load(std::memory_order_relaxed);
    if (index >= kLeaf * kLeaves) return;
    auto& leaf = leaves[index / kLeaf];
    if (!leaf) leaf = std::make_unique<Leaf>();
    auto& chunk = leaf->chunks[index % kLeaf / kChunk];
    if (!chunk) chunk = std::make_unique<Chunk>();
    // A search by time needs order; the caller promises it, and a broken promise must not cost more than one time.
    if (index > 0) point.time = std::max(point.time, at(index - 1).time);
    chunk->points[index % kChunk] = point;
    closeGroups(*leaf, *chunk, index + 1);
    count.store(index + 1, std::memory_order_release);
}

void TraceSnapshot::Store::closeGroups(Leaf& leaf, Chunk& chunk, std::size_t size) {
    if (size % kSize[1] != 0) return;
    const std::size_t last = size - 1;
    const std::size_t i1 = last % kChunk / kSize[1];
    chunk.level1[i1] = summary<Group>(&chunk.points[i1 * kFan], kFan);
    if (size % kSize[2] != 0) return;
    const std::size_t i2 = last % kChunk / kSize[2];
    chunk.level2[i2] = summary<Group>(&chunk.level1[i2 * kFan], kFan);
    if (size % kSize[3] != 0) return;
    chunk.level3 = summary<Group>(chunk.level2.data(), kFan);
    if (size % kSize[4] != 0) return;
    const std::size_t i4 = last % kLeaf / kSize[4];
    TraceExtremes all;
    for (std::size_t i = 0; i < kFan; ++i) merge(all, leaf.chunks[i4 * kFan + i]->level3);
    leaf.level4[i4] = {all.min_V, all.max_V, all.count};
    if (size % kSize[5] != 0) return;
    leaf.level5 = summary<Group>(leaf.level4.data(), kFan);
}

const TracePoint& TraceSnapshot::operator[](std::size_t index) const { return store_->at(index); }

std::size_t TraceSnapshot::firstAtOrAfter(Time time) const {
    std::size_t low = 0, high = count_;
    while (low < high) {
        const std::size_t middle = low + (high - low) / 2;
        if (store_->at(middle).time < time) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

std::vector<TraceExtremes> TraceSnapshot::extremes(Time from, Time to, std::size_t slices) const {
    std::vector<TraceExtremes> out(slices);
    if (slices == 0 || empty() || to <= from) return out;
    const auto n = static_cast<std::int64_t>(slices);
    const std::int64_t whole = (to - from).count() / n, rest = (to - from).count() % n;
    std::size_t index = firstAtOrAfter(from);
    for (std::int64_t slice = 0; slice < n && index < count_; ++slice) {
        // from + span · (slice + 1) / n, without the product that overflows
        const Time border = from + Time(whole * (slice + 1) + rest * (slice + 1) / n);
        if (store_->at(index).time >= border) continue;
        const std::size_t end = firstAtOrAfter(border);
        TraceExtremes& into = out[static_cast<std::size_t>(slice)];
        while (index < end) {
            int level = 5;
            while (level > 0 && (index % Store::kSize[level] != 0 || index + Store::kSize[level] > end)) --level;
            if (level == 0) {
                merge(into, store_->at(index));
            } else {
                merge(into, store_->group(index, level));
            }
            index += Store::kSize[level];
        }
    }
    return out;
}

Trace::Trace() : store_(std::make_shared<TraceSnapshot::Store>()) {}

void Trace::append(TracePoint point) { store_->append(point); }

TraceSnapshot Trace::snapshot() const {
    TraceSnapshot taken;
    taken.count_ = store_->count.load(std::memory_order_acquire);
    taken.store_ = store_;
    return taken;
}

std::size_t Trace::size() const { return store_->count.load(std::memory_order_acquire); }

} // namespace stillwire
