// SPDX-License-Identifier: GPL-3.0-or-later
// What each verb does. Results go to stdout; the value is done, or the one error that is told.
#pragma once

#include "app/cli/options.hpp"
#include "core/base/result.hpp"

namespace stillwire {

[[nodiscard]] Status runAnalyse(const Options& options);
[[nodiscard]] Status runExplain(const Options& options); // of analyse: how the file is read
[[nodiscard]] Status runReplay(const Options& options);
[[nodiscard]] Status runReport(const Options& options);
[[nodiscard]] Status runRecord(const Options& options);
[[nodiscard]] Status runSimulate(const Options& options);
[[nodiscard]] Status runListen(const Options& options);
[[nodiscard]] Status runFind(const Options& options);
[[nodiscard]] Status runPorts();
[[nodiscard]] Status runMeters();
[[nodiscard]] Status runSheets();

} // namespace stillwire
