// SPDX-License-Identifier: GPL-3.0-or-later
// A session: one thread that waits on the link, decodes, records, examines and leads; snapshots for whoever watches.
#pragma once

#include "core/base/result.hpp"
#include "core/capture/header.hpp"
#include "core/capture/reader.hpp"
#include "core/domain/reading.hpp"
#include "core/findings/findings.hpp"
#include "core/procedure/procedure.hpp"
#include "core/trace/trace.hpp"
#include "meters/describe/description.hpp"
#include "meters/link/link.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stillwire {

// How the way from the meter is, for the person: the sentence names the port and the mend.
enum class LinkState { opening, live, silent, lost, ended };

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
    ReadingFlags lastFlags;
    LinkState link = LinkState::opening;
    Sentence linkSays;            // one sentence, empty when all is well
    std::string capturePath;      // empty: not recording
    Sentence recorderSays;        // one sentence, empty when all is well
    std::size_t pendingBytes = 0; // of rows in memory that the disk did not take
    std::size_t garbageBytes = 0;
};

// Answers prompts in place of a person: called by the session's thread at every tick, with the time of the link's
// clock.
using Hand = std::function<std::vector<Command>(const Prompt&, Time now)>;

struct SessionOptions {
    bool guided = true;
    std::string capturePath{}; // empty: do not record
    std::string notesFolder{}; // for a note that it is being recorded (unfinished.hpp); empty: none
    double replaySpeed = 1;    // of a replayed capture; 0: as fast as it goes. A simulated link keeps its own pace
    std::uint64_t seed = 1;
    Hand hand{}; // of a simulated person; the session ends when the procedure is finished
};

// A meter and the way to it.
struct MeterPort {
    std::unique_ptr<Link> link;
    MeterDescription meter; // how its bytes are asked for and read
};

class Session {
public:
    // The header must hold the sheet and the meter on the signal. Opens the links and starts the thread; a link that
    // cannot open is an error at once. A second meter, on the reference wire, wants two links with the clock of the
    // computer; its readings carry the flag `ref`.
    [[nodiscard]] static Result<std::unique_ptr<Session>>
    start(MeterPort signal, CaptureHeader header, SessionOptions options, std::optional<MeterPort> reference = {});
    // A capture played again; `name` is its file's. Its header must hold the sheet and may lack the meter. Never
    // guided.
    [[nodiscard]] static Result<std::unique_ptr<Session>> replay(Capture capture, std::string name,
                                                                 SessionOptions options);
    virtual ~Session() = default; // stops, joins, syncs

    virtual std::shared_ptr<const SessionSnapshot>
    snapshot() const = 0;                      // any thread, waits for a pointer copy at most
    virtual void command(Command command) = 0; // stamped now
    virtual void mark(std::string text) = 0;   // stamped now
    virtual void saveTo(std::string path) = 0; // the whole capture into a new file, and on from there, also after the
                                               // end; recorderSays tells
    virtual bool running() const = 0;
    virtual void stop() = 0; // ends the recording; the last snapshot stays
};

} // namespace stillwire
