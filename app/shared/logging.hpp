// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stillwire {

// Sends the log to $XDG_STATE_HOME/stillwire/stillwire.log (else ~/.local/state/…); nowhere if that cannot be
// written. Nothing is ever logged to a terminal. The path, empty for nowhere.
std::string logToFile();

// $XDG_STATE_HOME/stillwire/recording (else ~/.local/state/…), where captures that are being recorded are noted
// (meters/session/unfinished.hpp); empty for nowhere.
std::string recordingNotes();

} // namespace stillwire
