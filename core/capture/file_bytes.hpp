// SPDX-License-Identifier: GPL-3.0-or-later
// The bytes of a file in blocks. Not mapped: a file that shrinks while it is read must not end the program.
#pragma once

#include "core/base/result.hpp"

#include <cstddef>
#include <string>

namespace stillwire {

class FileBytes {
public:
    [[nodiscard]] static Result<FileBytes> open(const std::string& path);
    FileBytes(FileBytes&& other) noexcept;
    FileBytes& operator=(FileBytes&&) = delete;
    ~FileBytes();

    // Up to `most` bytes to `into`; how many, 0 at the end.
    [[nodiscard]] Result<std::size_t> read(char* into, std::size_t most);

private:
    FileBytes(std::string path, int descriptor) : path_(std::move(path)), descriptor_(descriptor) {}

    std::string path_;
    int descriptor_;
};

} // namespace stillwire
