// SPDX-License-Identifier: GPL-3.0-or-later
// What a person would give up by ending a session now, in words; nothing is at stake once a run is over.
#pragma once

#include "meters/session/session.hpp"

#include <optional>

#include <QStringList>

namespace stillwire {

struct AtStake {
    QStringList says;     // what would be lost, then what is kept, a line each
    bool unsaved = false; // rows that the disk did not take: saving elsewhere keeps them
};

[[nodiscard]] std::optional<AtStake> atStake(const Session& session);

} // namespace stillwire
