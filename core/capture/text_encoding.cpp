// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/text_encoding.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <iconv.h>

namespace stillwire {

struct TextEncoding::Converter {
    explicit Converter(const char* from) : handle(::iconv_open("UTF-8", from)) {}
    Converter(const Converter&) = delete;
    Converter& operator=(const Converter&) = delete;
    ~Converter() {
        if (works()) ::iconv_close(handle);
    }
    [[nodiscard]] bool works() const { return handle != iconv_t(-1); }
    iconv_t handle;
};

namespace {

// Every other byte of Latin text in UTF-16 is zero.
const char* sixteenBits(std::string_view sample) {
    if (sample.starts_with("\xFF\xFE")) return "UTF-16LE";
    if (sample.starts_with("\xFE\xFF")) return "UTF-16BE";
    std::array<std::size_t, 2> zeros{};
    for (std::size_t i = 0; i < sample.size(); ++i)
        if (sample[i] == '\0') ++zeros[i % 2];
    const auto most = [&](std::size_t at) {
        return zeros[at] * 5 > sample.size() * 2 && zeros[1 - at] * 50 < sample.size();
    };
    if (most(1)) return "UTF-16LE";
    return most(0) ? "UTF-16BE" : nullptr;
}

// `sample` may end within a character.
bool isUtf8(std::string_view sample) {
    for (std::size_t i = 0; i < sample.size();) {
        const auto lead = static_cast<unsigned char>(sample[i]);
        const std::size_t more = lead < 0x80 ? 0 : lead >= 0xF0 && lead < 0xF5 ? 3 : lead >= 0xE0 ? 2 : 1;
        if ((lead >= 0x80 && lead < 0xC2) || lead >= 0xF5) return false;
        for (std::size_t k = 1; k <= more && i + k < sample.size(); ++k)
            if ((sample[i + k] & 0xC0) != 0x80) return false;
        i += more + 1;
    }
    return true;
}

} // namespace

TextEncoding::TextEncoding() = default;

TextEncoding::TextEncoding(std::string_view head) {
    const std::string_view sample = head.substr(0, kSample);
    if (const char* wide = sixteenBits(sample)) {
        name_ = wide;
    } else if (!isUtf8(sample) && sample.find('\0') == std::string_view::npos) {
        name_ = "WINDOWS-1252";
    }
    if (std::string_view(name_) != "UTF-8") {
        converter_ = std::make_unique<Converter>(name_);
        if (!converter_->works()) converter_.reset(); // then the bytes say for themselves what they are
    }
    std::string text(sample);
    if (converter_) {
        text.clear();
        convert(sample, text);
        left_.clear();
        ::iconv(converter_->handle, nullptr, nullptr, nullptr, nullptr);
    }
    loneReturns_ = text.find('\n') == std::string::npos && text.find('\r') != std::string::npos;
}

TextEncoding::TextEncoding(TextEncoding&&) noexcept = default;
TextEncoding& TextEncoding::operator=(TextEncoding&&) noexcept = default;
TextEncoding::~TextEncoding() = default;

void TextEncoding::decode(std::string_view bytes, std::string& out) {
    const std::size_t from = out.size();
    if (converter_)
        convert(bytes, out);
    else
        out += bytes;
    if (loneReturns_) std::replace(out.begin() + static_cast<std::ptrdiff_t>(from), out.end(), '\r', '\n');
}

void TextEncoding::convert(std::string_view bytes, std::string& out) {
    left_ += bytes;
    std::array<char, 16384> buffer;
    char* in = left_.data();
    std::size_t inLeft = left_.size();
    while (inLeft > 0) {
        char* to = buffer.data();
        std::size_t toLeft = buffer.size();
        const std::size_t done = ::iconv(converter_->handle, &in, &inLeft, &to, &toLeft);
        out.append(buffer.data(), buffer.size() - toLeft);
        if (done != static_cast<std::size_t>(-1) || errno == E2BIG) continue;
        if (errno == EINVAL) break; // cut in two
        out += "\xEF\xBF\xBD";
        const std::size_t step = std::min<std::size_t>(inLeft, name_[0] == 'U' ? 2 : 1);
        in += step;
        inLeft -= step;
    }
    left_ = std::string(in, inLeft);
}

} // namespace stillwire
