// SPDX-License-Identifier: GPL-3.0-or-later
// What was asked for on the command line.
#pragma once

#include "core/capture/reader.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace stillwire {

enum class Verb { analyse, record, replay, report, simulate, listen, find, ports, meters, sheets };

[[nodiscard]] const char* nameOf(Verb verb); // as it is typed

inline constexpr const char* kStandardInput = "/dev/stdin"; // what "-" stands for

struct Options {
    Verb verb = Verb::analyse;
    std::string file;  // the capture; empty: none given
    std::string sheet; // as given: a path or a name; empty: the capture's own
    std::string meter;
    std::string output; // -o
    ImportOptions import;
    bool json = false;
    bool explain = false; // how the file is read
    bool force = false;   // write over a file that is there
    // record
    std::string port;           // also of listen and find
    std::string referencePort;  // a second meter, on the reference wire
    std::string referenceMeter; // its description; empty: as the first one's
    double duration_s = 0;      // 0: until Ctrl-C or the end of the procedure
    std::optional<bool> guided; // record: led by default; simulate: by the script's plan
    // simulate
    std::string script;
    std::string truth;
    std::uint64_t seed = 1;
    bool serve = false;
    // find
    bool onlyListen = false; // ask nothing
};

// What parsing came to: options to run with, or the exit status when there is nothing to run (help, wrong usage).
struct Parsed {
    Options options;
    std::optional<int> exit;
};
[[nodiscard]] Parsed parseOptions(int argc, char** argv);

} // namespace stillwire
