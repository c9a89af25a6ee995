// SPDX-License-Identifier: GPL-3.0-or-later
// A session: one thread that waits on the link, decodes, records, examines and leads; snapshots for whoever watches.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/header.hpp"
#include "core/findings/findings.hpp"
#include "core/procedure/procedure.hpp"
#include "core/trace/trace.hpp"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace stillwire {

class Link;    // meters/link/link.hpp
class Decoder; // meters/decode/decoder.hpp

// How the way from the meter is, for the person: the sentence names the port and the mend.
enum class LinkState { opening, live, silent, lost, ended, failed };

// One moment, consistent in itself. Cheap to take; never changes once taken.
struct SessionSnapshot {
    std::uint64_t sequence = 0; // grows with every change
    Time now{0};
    TraceSnapshot trace;
    std::shared_ptr<const Findings> findings; // never null
    std::vector<Mark> marks;
    Prompt prompt;
    std::vector<PathEntry> path;
    bool guided = false;
    double lastVolts_V = 0; // NaN: no number
    LinkState link = LinkState::opening;
    std::string linkSays;     // one sentence, empty when all is well
    std::string capturePath;  // empty: not recording
    std::string recorderSays; // one sentence, empty when all is well
    std::size_t garbageBytes = 0;
};

struct SessionOptions {
    bool guided = true;
    std::string capturePath; // empty: do not record
    double replaySpeed = 1;  // of a replay link or a simulated one; 0: as fast as it goes
    std::uint64_t seed = 1;
};

class Session {
public:
    // The header must hold the sheet and the meter. Starts the thread; a link that cannot open is an error at once.
    [[nodiscard]] static Result<std::unique_ptr<Session>>
    start(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder, CaptureHeader header, SessionOptions options);
    virtual ~Session() = default; // stops, joins, syncs

    virtual std::shared_ptr<const SessionSnapshot>
    snapshot() const = 0;                      // any thread, waits for a pointer copy at most
    virtual void command(Command command) = 0; // stamped now
    virtual void mark(std::string text) = 0;   // stamped now
    virtual bool running() const = 0;
    virtual void stop() = 0; // ends the recording; the last snapshot stays
};

} // namespace stillwire
