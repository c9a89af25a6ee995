// SPDX-License-Identifier: GPL-3.0-or-later
// Files that are not UTF-8, or end their lines with a carriage return alone, as UTF-8 with LF ends. Told from the
// first bytes; everything else passes untouched.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

namespace stillwire {

class TextEncoding {
public:
    static constexpr std::size_t kSample = 65536; // bytes that tell, or all of a smaller file

    // UTF-8 with LF ends.
    TextEncoding();
    explicit TextEncoding(std::string_view head);
    TextEncoding(TextEncoding&&) noexcept;
    TextEncoding& operator=(TextEncoding&&) noexcept;
    ~TextEncoding();

    [[nodiscard]] const char* name() const { return name_; } // "UTF-8", "UTF-16LE", "UTF-16BE", "WINDOWS-1252"
    [[nodiscard]] bool untouched() const { return !converter_ && !loneReturns_; }

    // Onto the end of `out`. What the end of `bytes` cuts in two waits for the next call. A character that is none
    // becomes U+FFFD.
    void decode(std::string_view bytes, std::string& out);

private:
    struct Converter; // iconv's
    void convert(std::string_view bytes, std::string& out);

    const char* name_ = "UTF-8";
    bool loneReturns_ = false;
    std::string left_; // cut in two
    std::unique_ptr<Converter> converter_;
};

} // namespace stillwire
