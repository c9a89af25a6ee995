// SPDX-License-Identifier: GPL-3.0-or-later
// Behind Trace: points in chunks of 4096, chunks in leaves of 256, leaves in a fixed directory, so that nothing a
// reader holds ever moves. Every 16 points have a group with their extremes, every 16 groups one above, up to a whole
// leaf. A group is written once, when its last point comes in, and before the count is published: a reader that stays
// below its count never sees one half made.
#pragma once

#include "core/trace/trace.hpp"

namespace stillwire {

struct TraceSnapshot::Store {
    static constexpr std::size_t kFan = 16;
    static constexpr std::size_t kChunk = kFan * kFan * kFan;  // points in a chunk
    static constexpr std::size_t kLeaf = kChunk * kFan * kFan; // points in a leaf
    static constexpr std::size_t kLeaves = 4096;               // 4.3e9 points: 45 years at 3 readings/s
    static constexpr std::size_t kSize[6] = {1, 16, 256, 4096, 65536, 1048576}; // points in a group, by level

    struct Group {
        double min_V = 0, max_V = 0;
        std::size_t count = 0;
    };
    struct Chunk {
        std::array<TracePoint, kChunk> points;
        std::array<Group, kFan * kFan> level1;
        std::array<Group, kFan> level2;
        Group level3;
    };
    struct Leaf {
        std::array<std::unique_ptr<Chunk>, kFan * kFan> chunks;
        std::array<Group, kFan> level4;
        Group level5;
    };

    std::array<std::unique_ptr<Leaf>, kLeaves> leaves;
    std::atomic<std::size_t> count{0};

    [[nodiscard]] const Chunk& chunkOf(std::size_t index) const {
        return *leaves[index / kLeaf]->chunks[index % kLeaf / kChunk];
    }
    [[nodiscard]] const TracePoint& at(std::size_t index) const { return chunkOf(index).points[index % kChunk]; }
    // The group of `level` (1 to 5) that starts at `index`, a multiple of its size; all of it is in.
    [[nodiscard]] const Group& group(std::size_t index, int level) const;

    void append(TracePoint point);

private:
    void closeGroups(Leaf& leaf, Chunk& chunk, std::size_t count);
};

} // namespace stillwire
