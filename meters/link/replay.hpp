// SPDX-License-Identifier: GPL-3.0-or-later
// A capture played again through the session: its readings and marks are made already, so they pass no decoder.
#pragma once

#include "core/capture/reader.hpp"
#include "meters/link/link.hpp"

#include <memory>
#include <string>
#include <variant>

namespace stillwire {

// Rows in file order, one at a time.
class ReplayRows {
public:
    virtual ~ReplayRows() = default;
    [[nodiscard]] virtual bool atEnd() const = 0;
    [[nodiscard]] virtual Time nextTime() const = 0;          // precondition: !atEnd()
    virtual std::variant<Reading, Mark> take() = 0;           // precondition: !atEnd()
    [[nodiscard]] virtual const Capture& capture() const = 0; // header and all
};

struct Replay {
    std::unique_ptr<Link> link;
    CaptureHeader header;
    std::vector<Sentence> warnings; // of the reader
};

// Errors are loadCapture's.
[[nodiscard]] Result<Replay> openReplay(const std::string& path, const ImportOptions& options = {});
[[nodiscard]] std::unique_ptr<Link> makeReplayLink(Capture capture, std::string name);

} // namespace stillwire
