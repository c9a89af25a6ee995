// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/options.hpp"

#include "app/shared/exit_status.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <array>
#include <iostream>
#include <string_view>
#include <utility>

#include <CLI/CLI.hpp>

namespace stillwire {

namespace {

constexpr const char* kAbout =
    "Stillwire, a test bench for three-wire position sensors. Without arguments it opens its window.";

// An empty name is none: "-o ''" would write nowhere.
const CLI::Validator kSomeName([](std::string& word) { return word.empty() ? "a name is wanted" : std::string(); },
                               "");

char delimiterNamed(const std::string& word) {
    constexpr std::array<std::pair<std::string_view, char>, 5> kNames = {
        {{"tab", '\t'}, {"space", ' '}, {"comma", ','}, {"semicolon", ';'}, {"bar", '|'}}};
    for (const auto& [name, sign] : kNames)
        if (word == name) return sign;
    return word.size() == 1 ? word.front() : '\0';
}

void addNames(CLI::App& command, Options& o) {
    command.add_option("--sheet", o.sheet, "Sensor sheet: a path, or a name that `stillwire sheets` lists");
    command.add_option("--meter", o.meter, "Meter description: a path, or a name that `stillwire meters` lists");
}

// Options that make something else of their word; what they do not know is wrong usage.
template <class Take> void addWord(CLI::App& command, const char* name, const char* what, Take take) {
    command.add_option_function<std::string>(
        name,
        [name, take](const std::string& word) {
            if (!take(word)) throw CLI::ValidationError(name, "does not know \"" + word + "\"");
        },
        what);
}

void addImport(CLI::App& command, Options& o) {
    const char* kGroup = "Another program's file";
    ImportOptions& i = o.import;
    command.add_option("--time-column", i.timeColumn, "Its time column, by name or number from 1")->group(kGroup);
    command.add_option("--volts-column", i.voltsColumn, "Its volts column, the signal")->group(kGroup);
    command.add_option("--reference-column", i.referenceColumn, "A second channel, on the reference wire")
        ->group(kGroup);
    addWord(command, "--delimiter", "What separates its columns: a sign, or tab, space, comma, semicolon, bar",
            [&i](const std::string& word) {
                i.delimiter = delimiterNamed(word);
                return i.delimiter != '\0';
            });
    CLI::Option* comma = command.add_flag_callback(
        "--decimal-comma", [&i] { i.decimalComma = true; }, "Its numbers have a decimal comma");
    command
        .add_flag_callback(
            "--decimal-point", [&i] { i.decimalComma = false; }, "Its numbers have a decimal point")
        ->excludes(comma);
    addWord(command, "--time-as", "What its times are: us, ms, s, min, h, d, clock, hhmmss, stamp, h:m or m:s",
            [&i](const std::string& word) { return (i.timeAs = timeAsNamed(word)).has_value(); });
    addWord(command, "--date-order", "How its dates are written: ymd, dmy or mdy",
            [&i](const std::string& word) { return (i.dateOrder = dateOrderNamed(word)).has_value(); });
    addWord(command, "--volts-unit", "What its values are where they do not say: V or mV",
            [&i](const std::string& word) {
                i.voltsExponent = word == "mV" ? -3 : 0;
                return word == "mV" || word == "V";
            });
    addWord(command, "--interval", "It has no times: the seconds between its rows", [&i](const std::string& word) {
        i.interval = parseTime(word);
        return i.interval && *i.interval > Time(0);
    });
    command.add_option("--last-line", i.lastLine, "The last line that holds a reading; 0: the last of the file")
        ->check(CLI::NonNegativeNumber);
    for (const char* name : {"--delimiter", "--decimal-comma", "--decimal-point", "--time-as", "--date-order",
                             "--volts-unit", "--interval", "--last-line"})
        command.get_option(name)->group(kGroup);
}

void addFile(CLI::App& command, Options& o) {
    command
        .add_option("FILE", o.file, "The capture, or another CSV with a time and a volts column; - is standard input")
        ->required()
        ->check(kSomeName);
}

void addDuration(CLI::App& command, Options& o, const char* what) {
    addWord(command, "--duration", what, [&o](const std::string& word) {
        const auto given = parseNumber(word);
        o.duration_s = given.value_or(0);
        return given && *given > 0 && *given < 1e9;
    });
}

void addForce(CLI::App& command, Options& o, const char* what) { command.add_flag("--force", o.force, what); }

CLI::App* verb(CLI::App& app, Options& o, Verb v, const char* what, const char* example) {
    CLI::App* command = app.add_subcommand(nameOf(v), what);
    command->footer(std::string("Example:\n  ") + example);
    command->callback([&o, v] { o.verb = v; });
    return command;
}

void build(CLI::App& app, Options& o) {
    app.require_subcommand(1);
    app.set_version_flag("--version", "stillwire " STILLWIRE_VERSION);
    app.footer("Example:\n  stillwire analyse demo-sessions/good-pedal.csv\n\n"
               "Exit status: 0 done, whatever the verdict; 2 wrong usage; 3 bad input; 1 our fault.");

    CLI::App* c = verb(app, o, Verb::analyse, "Judge a capture and say what to do",
                       "stillwire analyse demo-sessions/good-pedal.csv --json");
    addFile(*c, o);
    addNames(*c, o);
    CLI::Option* json = c->add_flag("--json", o.json, "One JSON object instead of the report");
    c->add_flag("--explain", o.explain, "Say how the file is read, without judging it")->excludes(json);
    addImport(*c, o);

    c = verb(
        app, o, Verb::record, "Record a capture from a meter on a port, led through the steps",
        "stillwire record --port /dev/ttyUSB0 --meter text-line-logger --sheet resurfacer-drive-pedal -o monday.csv");
    c->add_option("--port", o.port, "The port, as `stillwire ports` lists it: its name, or its adapter's identity")
        ->required()
        ->check(kSomeName);
    addNames(*c, o);
    c->add_option("-o,--output", o.output, "The capture to write; an existing file is never overwritten")
        ->required()
        ->check(kSomeName);
    CLI::Option* second =
        c->add_option("--reference-port", o.referencePort, "The port of a second meter, on the reference wire");
    c->add_option("--reference-meter", o.referenceMeter,
                  "Its description, if it is not another of the first one's kind")
        ->needs(second);
    addDuration(*c, o, "Stop after this many seconds");
    c->add_flag_callback(
        "--guided", [&o] { o.guided = true; }, "Lead through the steps (the default)");
    c->add_flag_callback(
        "--no-guide", [&o] { o.guided = false; }, "Only record");

    c = verb(app, o, Verb::replay, "Play a capture at speed and print its findings as they come",
             "stillwire replay demo-sessions/worn-cold-pedal.csv");
    addFile(*c, o);
    addNames(*c, o);
    addImport(*c, o);

    c = verb(app, o, Verb::report, "Write a report to print",
             "stillwire report demo-sessions/worn-cold-pedal.csv -o worn.html");
    addFile(*c, o);
    addNames(*c, o);
    addImport(*c, o);
    c->add_option("-o,--output", o.output, "The report to write, a name that ends in .html")
        ->required()
        ->check(kSomeName);
    addForce(*c, o, "Write over a report that is there");

    c = verb(app, o, Verb::simulate, "Make a capture on the simulated meter, or serve it as a port",
             "stillwire simulate --script worn-cold --seed 7 -o worn.csv");
    c->add_option("--script", o.script,
                  "What is wrong and what the hand does: a .toml file, or a name among the scripts");
    addNames(*c, o);
    c->add_option("--seed", o.seed, "The same seed gives the same bytes");
    c->add_option("-o,--output", o.output, "The capture to write; an existing file is never overwritten")
        ->check(kSomeName);
    c->add_option("--truth", o.truth, "Write what really happened, as JSON")->check(kSomeName);
    addForce(*c, o, "Write over a truth that is there");
    c->add_flag_callback(
        "--guided", [&o] { o.guided = true; },
        "The hand follows the procedure over the meter's bytes, instead of the script's plan");
    c->add_flag("--serve", o.serve,
                "Send the meter's bytes to a pseudo-terminal, in real time, instead of writing a capture");

    c = verb(app, o, Verb::listen, "Show a meter's bytes beside the readings they make",
             "stillwire listen --port /dev/ttyUSB0 --meter ./my-meter.toml");
    CLI::Option* port = c->add_option("--port", o.port, "The port, as `stillwire ports` lists it");
    c->add_option("FILE", o.file, "Or a file of bytes as they came")->excludes(port);
    c->add_option("--meter", o.meter, "The description to try: a path, or a name that `stillwire meters` lists");
    addDuration(*c, o, "Stop after this many seconds, or with the key q");

    c = verb(app, o, Verb::find, "Find the meter: which port, which link settings, which description",
             "stillwire find");
    c->add_option("--port", o.port, "Only this port; all of them if not given");
    c->add_option("--meter", o.meter, "A description to try beside those that `stillwire meters` lists");
    c->add_flag("--only-listen", o.onlyListen, "Ask nothing: find only meters that send by themselves");

    verb(app, o, Verb::ports, "List the ports a meter may be on", "stillwire ports");
    verb(app, o, Verb::meters, "List the meter descriptions known by name", "stillwire meters");
    verb(app, o, Verb::sheets, "List the sensor sheets known by name", "stillwire sheets");
}

std::string oneLine(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

} // namespace

const char* nameOf(Verb verb) {
    switch (verb) {
    case Verb::analyse: return "analyse";
    case Verb::record: return "record";
    case Verb::replay: return "replay";
    case Verb::report: return "report";
    case Verb::simulate: return "simulate";
    case Verb::listen: return "listen";
    case Verb::find: return "find";
    case Verb::ports: return "ports";
    case Verb::meters: return "meters";
    case Verb::sheets: break;
    }
    return "sheets";
}

Parsed parseOptions(int argc, char** argv) {
    Parsed parsed;
    CLI::App app{kAbout, "stillwire"};
    build(app, parsed.options);
    try {
        app.parse(argc, argv);
        if (parsed.options.file == "-") parsed.options.file = kStandardInput;
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
