// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/examination_capture.hpp"

namespace stillwire {

void pushRows(const Capture& capture, Examination& examination) {
    for (const Capture::Row& row : capture.rows) {
        if (row.isMark)
            examination.push(capture.marks[row.index]);
        else
            examination.push(capture.readings[row.index]);
    }
}

} // namespace stillwire
