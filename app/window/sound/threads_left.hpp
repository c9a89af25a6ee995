// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a thread still waits for a server that does not answer. A program that ends then may not tidy up under it.
#pragma once

#include <atomic>

namespace stillwire {

inline std::atomic<bool> threadsLeft{false};

} // namespace stillwire
