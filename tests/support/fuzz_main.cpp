// SPDX-License-Identifier: GPL-3.0-or-later
// Plays files (or the files of folders) through a fuzz target where there is no libFuzzer, so that no target rots.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int main(int count, char** arguments) {
    std::vector<std::filesystem::path> files;
    for (int i = 1; i < count; ++i) {
        if (!std::filesystem::exists(arguments[i])) {
            std::fprintf(stderr, "%s: there is no such corpus\n", arguments[i]);
            return 1;
        }
        if (!std::filesystem::is_directory(arguments[i]))
            files.emplace_back(arguments[i]);
        else
            for (const auto& entry : std::filesystem::recursive_directory_iterator(arguments[i]))
                if (entry.is_regular_file()) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    for (const auto& path : files) {
        std::ifstream file(path, std::ios::binary);
        const std::vector<char> text((std::istreambuf_iterator<char>(file)), {});
        const std::vector<std::uint8_t> bytes(text.begin(), text.end());
        LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
    }
    std::printf("%zu inputs\n", files.size());
    return files.empty() ? 1 : 0; // an empty corpus proves nothing
}
