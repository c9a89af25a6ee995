// SPDX-License-Identifier: GPL-3.0-or-later
// Between the program's text and the terminal: names and notes out of files may hold characters that a terminal
// obeys; they never reach it.
#pragma once

#include <ostream>
#include <streambuf>
#include <string>

namespace stillwire {

// Line ends and tabs stay, other control characters become '?'.
[[nodiscard]] std::string withoutControls(std::string text);

// For as long as it lives, what `out` is given goes through withoutControls().
class PlainOutput final : public std::streambuf {
public:
    explicit PlainOutput(std::ostream& out) : out_(out), to_(out.rdbuf(this)) {}
    ~PlainOutput() override { out_.rdbuf(to_); }
    PlainOutput(const PlainOutput&) = delete;
    PlainOutput& operator=(const PlainOutput&) = delete;

private:
    int_type overflow(int_type c) override;
    std::streamsize xsputn(const char* text, std::streamsize size) override;
    int sync() override { return to_->pubsync(); }
    bool put(char c);

    std::ostream& out_;
    std::streambuf* to_;
    bool held_ = false; // the first byte of a character of two that may be a control
};

} // namespace stillwire
