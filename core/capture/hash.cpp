// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/fields.hpp"
#include "core/capture/read_rows.hpp"
#include "core/text/sha256.hpp"

namespace stillwire {

Result<std::string> captureHash(const std::string& path) {
    struct NoSink : RowSink {
        void readings(const Reading*, std::size_t) override {}
        void reading(const Reading&) override {}
        void mark(const Mark&) override {}
    } sink;
    struct Hasher : RawRows {
        Sha256 sum;
        void row(std::string_view raw, RowKind kind, Time) override {
            if (kind != RowKind::reading) return;
            sum.add(withoutLineEnd(raw));
            sum.add("\n");
        }
    } hasher;
    auto summary = readRows(path, sink, {}, &hasher, nullptr);
    if (!summary) return summary.error();
    std::string digest = hasher.sum.finish();
    if (digest.empty()) {
        return Error{Error::Kind::ourFault, path, 0, "the hash could not be computed",
                     "reinstall the OpenSSL library"};
    }
    return digest;
}

} // namespace stillwire
