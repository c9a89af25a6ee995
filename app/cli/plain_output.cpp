// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/plain_output.hpp"

#include <sstream>

namespace stillwire {

namespace {

constexpr char kLead = '\xC2'; // of U+0080 to U+00BF in UTF-8; those up to U+009F are controls

bool isControl(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7f;
}

} // namespace

bool PlainOutput::put(char c) {
    const auto give = [this](char one) { return to_->sputc(one) != traits_type::eof(); };
    if (held_) {
        held_ = false;
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x80 && byte < 0xA0) return give('?');
        if (!give(kLead)) return false;
    }
    if (c == kLead) return held_ = true;
    return give(isControl(c) ? '?' : c);
}

PlainOutput::int_type PlainOutput::overflow(int_type c) {
    if (traits_type::eq_int_type(c, traits_type::eof())) return traits_type::not_eof(c);
    return put(traits_type::to_char_type(c)) ? c : traits_type::eof();
}

std::streamsize PlainOutput::xsputn(const char* text, std::streamsize size) {
    for (std::streamsize i = 0; i < size; ++i)
        if (!put(text[i])) return i;
    return size;
}

std::string withoutControls(std::string text) {
    std::ostringstream out;
    {
        const PlainOutput plain(out);
        out << text;
    }
    return out.str();
}

} // namespace stillwire
