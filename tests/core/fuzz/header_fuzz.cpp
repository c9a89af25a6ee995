// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto header = parseHeader(std::string(data, data + size), "fuzz");
    if (!header) {
        checkError(header.error());
        return 0;
    }
    const std::string once = formatHeader(*header);
    struct Keeper : RowSink {
        CaptureHeader kept;
        Status header(const CaptureHeader& read) override {
            kept = read;
            return Done{};
        }
        void reading(const Reading&) override {}
        void mark(const Mark&) override {}
    } keeper;
    require(readCaptureText(once + kColumns, "again", keeper).ok(), "a header that was written reads");
    require(formatHeader(keeper.kept) == once, "and is the same again");
    return 0;
}
