// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/examination_capture.hpp"

namespace stillwire {

void pushRows(const Capture& capture, Examination& examination) {
    capture.eachRow([&](const auto& row) { examination.push(row); });
}

} // namespace stillwire
