// SPDX-License-Identifier: GPL-3.0-or-later
// Any text is a bench script or an error with a cause.
#include "meters/bench/script.hpp"
#include "tests/core/fuzz/invariants.hpp"

#include <cstdint>

using namespace stillwire;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto script = parseBenchScript(std::string(data, data + size), "fuzz");
    if (!script) {
        checkError(script.error());
        return 0;
    }
    require(script->plan.shaftPoses >= 0 && script->plan.harnessPoses >= 0 && script->plan.sections >= 0,
            "nothing is done a negative number of times");
    require(std::isfinite(script->plan.coldStart_s) && std::isfinite(script->plan.poseReadings), "times are numbers");
    return 0;
}
