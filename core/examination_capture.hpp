// SPDX-License-Identifier: GPL-3.0-or-later
// A capture that is whole in memory, through the one path: every row in the order of the file.
#pragma once

#include "core/capture/reader.hpp"
#include "core/examination.hpp"

namespace stillwire {

void pushRows(const Capture& capture, Examination& examination);

} // namespace stillwire
