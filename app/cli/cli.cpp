// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/cli.hpp"

#include "app/cli/commands.hpp"
#include "app/cli/options.hpp"
#include "app/cli/plain_output.hpp"
#include "app/shared/exit_status.hpp"
#include "app/shared/logging.hpp"
#include "app/shared/resources.hpp"

#include <algorithm>
#include <exception>
#include <iostream>

namespace stillwire {

namespace {

Status run(const Options& o) {
    switch (o.verb) {
    case Verb::analyse: return runAnalyse(o);
    case Verb::record: return runRecord(o);
    case Verb::replay: return runReplay(o);
    case Verb::report: return runReport(o);
    case Verb::simulate: return runSimulate(o);
    case Verb::listen: return runListen(o);
    case Verb::find: return runFind(o);
    case Verb::ports: return runPorts();
    case Verb::meters: return runMeters();
    case Verb::sheets: return runSheets();
    }
    return Done{};
}

// One line, whatever the file put into the message.
int tell(std::string text, int status) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    std::cerr << "stillwire: " << withoutControls(text) << "\n";
    return status;
}

int tell(const Options& o, const Error& error) {
    switch (error.kind) {
    case Error::Kind::badInput: return tell(error.text(), kExitBadInput);
    case Error::Kind::ourFault: return tell(error.text(), kExitOurFault);
    case Error::Kind::wrongUsage: break;
    }
    return tell(error.text() + "; see `stillwire " + nameOf(o.verb) + " --help`", kExitUsage);
}

} // namespace

int runCommandLine(int argc, char** argv) {
    try {
        logToFile();
        Parsed parsed = parseOptions(argc, argv);
        if (parsed.exit) return *parsed.exit;
        parsed.options.file = shippedOr(parsed.options.file);
        const PlainOutput plain(std::cout);
        const Status status = run(parsed.options);
        if (!status) return tell(parsed.options, status.error());
        std::cout.flush();
        if (!std::cout) return tell("standard output: cannot be written; check the disk or the pipe", kExitOurFault);
        return kExitDone;
    } catch (const std::exception& e) {
        return tell(std::string("an error of the program's own: ") + e.what(), kExitOurFault);
    }
}

} // namespace stillwire
