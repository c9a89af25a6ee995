// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sha256.hpp"

#include <array>

#include <openssl/evp.h>

namespace stillwire {

struct Sha256::State {
    struct Free {
        void operator()(EVP_MD_CTX* done) const { EVP_MD_CTX_free(done); }
    };
    std::unique_ptr<EVP_MD_CTX, Free> context{EVP_MD_CTX_new()};
    bool good = false;
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
    state_->good = state_->context && EVP_DigestInit_ex(state_->context.get(), EVP_sha256(), nullptr) == 1;
}

Sha256::~Sha256() = default;

void Sha256::add(std::string_view bytes) {
    state_->good = state_->good && EVP_DigestUpdate(state_->context.get(), bytes.data(), bytes.size()) == 1;
}

std::string Sha256::finish() {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned size = 0;
    if (!state_->good || EVP_DigestFinal_ex(state_->context.get(), digest.data(), &size) != 1) return {};
    constexpr const char* kDigits = "0123456789abcdef";
    std::string out;
    for (unsigned i = 0; i < size; ++i) {
        out += kDigits[digest[i] >> 4];
        out += kDigits[digest[i] & 15];
    }
    return out;
}

} // namespace stillwire
