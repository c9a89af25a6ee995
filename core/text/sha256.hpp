// SPDX-License-Identifier: GPL-3.0-or-later
// SHA-256 (FIPS 180-4) of bytes that come in pieces. The library behind it is seen by sha256.cpp alone.
#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace stillwire {

class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;

    void add(std::string_view bytes);
    [[nodiscard]] std::string finish(); // 64 lower-case hexadecimal digits; empty if the library refused

private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace stillwire
