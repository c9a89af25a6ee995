// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/options.hpp"

#include "app/shared/exit_status.hpp"

#include <algorithm>
#include <iostream>

#include <CLI/CLI.hpp>

namespace stillwire {

namespace {

constexpr const char* kAbout =
    "Stillwire, a test bench for three-wire position sensors. Without arguments it opens its window.";

void addNames(CLI::App& command, Options& o) {
    command.add_option("--sheet", o.sheet, "Sensor sheet: a path, or a name that `stillwire sheets` lists");
    command.add_option("--meter", o.meter, "Meter description: a path, or a name that `stillwire meters` lists");
}

void addImport(CLI::App& command, Options& o) {
    command.add_option("--time-column", o.import.timeColumn, "Name of the time column of another program's file");
    command.add_option("--volts-column", o.import.voltsColumn, "Name of its volts column");
    command.add_option("--delimiter", o.import.delimiter, "What separates its columns");
    command.add_flag_callback(
        "--decimal-comma", [&o] { o.import.decimalComma = true; }, "Its numbers have a comma");
}

void addFile(CLI::App& command, Options& o) {
    command.add_option("FILE", o.file, "The capture, or another CSV with a time and a volts column")->required();
}

CLI::App* verb(CLI::App& app, Options& o, Verb v, const char* name, const char* what, const char* example) {
    CLI::App* command = app.add_subcommand(name, what);
    command->footer(std::string("Example:\n  ") + example);
    command->callback([&o, v] { o.verb = v; });
    return command;
}

void build(CLI::App& app, Options& o) {
    app.require_subcommand(1);
    app.footer("Example:\n  stillwire analyse demo-sessions/good-pedal.csv\n\n"
               "Exit status: 0 done, whatever the verdict; 2 wrong usage; 3 bad input; 1 our fault.");

    CLI::App* c = verb(app, o, Verb::analyse, "analyse", "Judge a capture and say what to do",
                       "stillwire analyse demo-sessions/good-pedal.csv --json");
    addFile(*c, o);
    addNames(*c, o);
    c->add_flag("--json", o.json, "One JSON object instead of the report");
    addImport(*c, o);

    c = verb(
        app, o, Verb::record, "record", "Record a capture from a meter on a port, led through the steps",
        "stillwire record --port /dev/ttyUSB0 --meter text-line-logger --sheet resurfacer-drive-pedal -o monday.csv");
    c->add_option("--port", o.port, "The port, as `stillwire ports` lists it: its name, or its adapter's identity")
        ->required();
    addNames(*c, o);
    c->add_option("-o,--output", o.output, "The capture to write; an existing file is never overwritten")->required();
    CLI::Option* second =
        c->add_option("--reference-port", o.referencePort, "The port of a second meter, on the reference wire");
    c->add_option("--reference-meter", o.referenceMeter,
                  "Its description, if it is not another of the first one's kind")
        ->needs(second);
    c->add_option("--duration", o.duration_s, "Stop after this many seconds")->check(CLI::PositiveNumber);
    c->add_flag_callback(
        "--guided", [&o] { o.guided = true; }, "Lead through the steps (the default)");
    c->add_flag_callback(
        "--no-guide", [&o] { o.guided = false; }, "Only record");

    c = verb(app, o, Verb::replay, "replay", "Play a capture at speed and print its findings as they come",
             "stillwire replay demo-sessions/worn-cold-pedal.csv");
    addFile(*c, o);
    addNames(*c, o);
    addImport(*c, o);

    c = verb(app, o, Verb::report, "report", "Write a report to print", "stillwire report monday.csv -o monday.html");
    addFile(*c, o);
    addNames(*c, o);
    addImport(*c, o);
    c->add_option("-o,--output", o.output, "The report to write, a name that ends in .html")->required();

    c = verb(app, o, Verb::simulate, "simulate", "Make a capture on the simulated meter, or serve it as a port",
             "stillwire simulate --script worn-cold --seed 7 -o worn.csv");
    c->add_option("--script", o.script,
                  "What is wrong and what the hand does: a .toml file, or a name among the scripts");
    addNames(*c, o);
    c->add_option("--seed", o.seed, "The same seed gives the same bytes");
    c->add_option("-o,--output", o.output, "The capture to write; an existing file is never overwritten");
    c->add_option("--truth", o.truth, "Write what really happened, as JSON");
    c->add_flag_callback(
        "--guided", [&o] { o.guided = true; },
        "The hand follows the procedure over the meter's bytes, instead of the script's plan");
    c->add_flag("--serve", o.serve,
                "Send the meter's bytes to a pseudo-terminal, in real time, instead of writing a capture");

    c = verb(app, o, Verb::listen, "listen", "Show a meter's bytes beside the readings they make",
             "stillwire listen --port /dev/ttyUSB0 --meter ./my-meter.toml");
    CLI::Option* port = c->add_option("--port", o.port, "The port, as `stillwire ports` lists it");
    c->add_option("FILE", o.file, "Or a file of bytes as they came")->excludes(port);
    c->add_option("--meter", o.meter, "The description to try: a path, or a name that `stillwire meters` lists");
    c->add_option("--duration", o.duration_s, "Stop after this many seconds, or with the key q")
        ->check(CLI::PositiveNumber);

    c = verb(app, o, Verb::find, "find", "Find the meter: which port, which link settings, which description",
             "stillwire find");
    c->add_option("--port", o.port, "Only this port; all of them if not given");
    c->add_option("--meter", o.meter, "A description to try beside those that `stillwire meters` lists");
    c->add_flag("--only-listen", o.onlyListen, "Ask nothing: find only meters that send by themselves");

    verb(app, o, Verb::ports, "ports", "List the ports a meter may be on", "stillwire ports");
    verb(app, o, Verb::meters, "meters", "List the meter descriptions known by name", "stillwire meters");
    verb(app, o, Verb::sheets, "sheets", "List the sensor sheets known by name", "stillwire sheets");
}

std::string oneLine(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

} // namespace

Parsed parseOptions(int argc, char** argv) {
    Parsed parsed;
    CLI::App app{kAbout, "stillwire"};
    build(app, parsed.options);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& e) {
        if (e.get_exit_code() == 0) {
            parsed.exit = app.exit(e, std::cout, std::cout);
        } else {
            const auto chosen = app.get_subcommands();
            const std::string help = chosen.empty() ? "" : chosen.front()->get_name() + " ";
            std::cerr << "stillwire: " << oneLine(e.what()) << "; see `stillwire " << help << "--help`\n";
            parsed.exit = kExitUsage;
        }
    }
    return parsed;
}

} // namespace stillwire
