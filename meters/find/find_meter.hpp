// SPDX-License-Identifier: GPL-3.0-or-later
// Finds the meter: listens on ports under the link settings of every description, then asks those that want asking,
// then tries other settings; says which description fits and how sure that is, or what the bytes look like.
#pragma once

#include "core/base/result.hpp"
#include "meters/find/fit.hpp"
#include "meters/find/likeness.hpp"
#include "meters/link/link.hpp"

#include <functional>
#include <memory>
#include <stop_token>
#include <string>
#include <vector>

namespace stillwire {

struct MeterCandidate {
    std::string name; // what --meter takes
    MeterDescription description;
};

struct MeterMatch {
    std::string name;
    LinkSettings link;
    bool asDescribed = true; // false: only with these link settings in place of the description's
    Fit fit;
    std::string identity; // what the instrument said it is; empty: it was not asked, or did not say
};

struct PortFinding {
    std::string port;
    std::string trouble;             // it did not open: cause and mend; empty: it did
    std::vector<MeterMatch> matches; // best first
    // When nothing fits: the most readable of what came, and under which settings.
    LinkSettings heardWith;
    Heard heard;
    Likeness look;
};

// What to tell a person, a sentence a line, the most useful first.
[[nodiscard]] std::vector<Sentence> findingSays(const PortFinding& finding);

struct FindProgress {
    std::string port;
    LinkSettings link;
    bool asking = false;  // else listening
    int step = 0, of = 0; // `of` may shrink: a port that is found early needs no more
    std::size_t bytes = 0;
};
[[nodiscard]] Sentence progressSays(const FindProgress& progress);

struct FindPlan {
    std::vector<std::string> ports;
    std::vector<MeterCandidate> candidates;
    bool mayAsk = true;    // send poll commands; a port that sends by itself is never asked
    double listen_s = 1.5; // under one set of settings, at least; meters slower than that get 3.5 of their intervals
};

// What makes a link, in tests one of their own.
using LinkMaker = std::function<std::unique_ptr<Link>(const std::string& port, const LinkSettings& settings)>;

// In the caller's thread, port after port; a stop is heeded within a tenth of a second and what was found so far is
// given back. `told` is called from the same thread.
[[nodiscard]] std::vector<PortFinding> findMeters(const FindPlan& plan, const LinkMaker& makeLink,
                                                  const std::function<void(const FindProgress&)>& told,
                                                  const std::stop_token& stop);

} // namespace stillwire
