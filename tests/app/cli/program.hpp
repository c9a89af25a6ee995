// SPDX-License-Identifier: GPL-3.0-or-later
// The built program, run as a person runs it, in a folder of the test's own.
#pragma once

#include "tests/support/source_folder.hpp"

#include <string>
#include <vector>

namespace stillwire::testing {

struct Ran {
    int status = -1;
    std::string out, err;
    [[nodiscard]] int errLines() const;
};

class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] std::string path(const std::string& name) const { return path_ + "/" + name; }
    std::string write(const std::string& name, const std::string& bytes) const; // returns the path
    [[nodiscard]] std::string read(const std::string& name) const;              // empty if there is none

private:
    std::string path_;
};

[[nodiscard]] Ran run(const std::vector<std::string>& arguments, const std::string& environment = "");
using test::sourceFile; // the demo sheets and meters

} // namespace stillwire::testing
