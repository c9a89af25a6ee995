// SPDX-License-Identifier: GPL-3.0-or-later
// A value, or an error a mechanic can act on. No exceptions cross a public header of core or meters.
#pragma once

#include "core/base/sentence.hpp"

#include <string>
#include <utility>
#include <variant>

namespace stillwire {

// One sentence's worth: where (file, port or sheet name), line (1-based, 0 if none), what is wrong, how to mend it.
struct Error {
    enum class Kind { badInput, ourFault, wrongUsage };

    Kind kind = Kind::badInput;
    std::string where;
    int line = 0;
    Sentence what;
    Sentence mend;

    // "demo.csv:12: times go back from 3.2 s to 1.1 s; remove the row or split the file there"
    [[nodiscard]] Sentence sentence() const;
    [[nodiscard]] std::string text() const; // the same in English
};

template <class T> class [[nodiscard]] Result {
public:
    Result(T value) : content_(std::move(value)) {}
    Result(Error error) : content_(std::move(error)) {}

    [[nodiscard]] bool ok() const { return std::holds_alternative<T>(content_); }
    explicit operator bool() const { return ok(); }

    // Precondition of the first four: ok(); of error(): !ok().
    [[nodiscard]] T& value() { return std::get<T>(content_); }
    [[nodiscard]] const T& value() const { return std::get<T>(content_); }
    T& operator*() { return value(); }
    T* operator->() { return &value(); }
    [[nodiscard]] const Error& error() const { return std::get<Error>(content_); }

private:
    std::variant<T, Error> content_;
};

struct Done {};
using Status = Result<Done>;

} // namespace stillwire
