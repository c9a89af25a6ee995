// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/html.hpp"

#include "app/cli/spoken.hpp"

namespace stillwire {

namespace {

// A4 and Letter alike: the page's own size is left to the printer, only the margins are set.
constexpr const char* kStyle = R"(
@page { margin: 15mm; }
body { font: 10.5pt/1.4 "B612", "DejaVu Sans", sans-serif; color: #14212B; background: #fff; max-width: 47em; margin: 1em auto; padding: 0 1em; }
h1 { font-size: 17pt; margin: 0; } h2 { font-size: 12pt; margin: 1.1em 0 .3em; border-bottom: 1px solid #14212B; }
p { margin: .25em 0; } .kind { margin: 0 0 .6em; } .verdict { border: 2px solid #14212B; padding: .5em .8em; margin: .6em 0; }
.verdict b { font-size: 14pt; display: block; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; overflow-wrap: anywhere; } th, td { border-bottom: 1px solid #3A4751; padding: .3em .5em .3em 0; vertical-align: top; text-align: left; font-weight: normal; }
.pairs th { width: 34%; color: #3A4751; } .levels th { color: #3A4751; } .blank td { height: 2.2em; } .tall td { height: 4.2em; }
svg { width: 100%; } svg text { font-size: 11px; fill: #14212B; } svg text.small { font-size: 9px; }
.trace { fill: none; stroke: #0B4A7A; stroke-width: 1.2; } .window { fill: #BFDDEE; } .grid { stroke: #ccc; }
.step { stroke: #3A4751; stroke-dasharray: 3 3; } .dropout { fill: #8C2F00; } .blind { fill: url(#hatch); }
.key { font-size: 9pt; color: #3A4751; } .caution { border-left: 4px solid #14212B; padding-left: .6em; }
@media print { body { max-width: none; margin: 0; padding: 0; -webkit-print-color-adjust: exact; print-color-adjust: exact; } }
h2, .verdict, svg, tr { break-inside: avoid; } h2 { break-after: avoid; } p { orphans: 2; widows: 2; }
)";

std::string heading(const ReportInput& in, const Sentence& text) {
    return "<h2>" + escapeHtml(in.say(text)) + "</h2>\n";
}

std::string paragraph(const ReportInput& in, const Line& line, const char* kind = "") {
    std::string out = *kind == '\0' ? "<p>" : "<p class=\"" + std::string(kind) + "\">";
    for (std::size_t i = 0; i < line.size(); ++i) out.append(i > 0 ? " " : "").append(escapeHtml(in.say(line[i])));
    return out + "</p>\n";
}

std::string verdictBox(const ReportInput& in) {
    const Verdict& v = in.evaluation.findings.verdict;
    std::string out = "<div class=\"verdict\"><b>" + escapeHtml(in.say(verdictSentence(v))) + "</b>";
    if (!v.reasons.empty()) out += escapeHtml(in.say(v.reasons.front().says));
    return out + "</div>\n";
}

std::string limits(const ReportInput& in) {
    return heading(in, "Limits of this report") +
           paragraph(in, {"A slow meter averages: depths are at least what is printed, and dropouts shorter than the "
                          "meter can see stay unseen.",
                          "It speaks of what was touched while the meter watched, at the temperature of that day.",
                          "The maker's service literature comes before anything said here."});
}

} // namespace

std::string escapeHtml(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '&')
            out += "&amp;";
        else if (c == '<')
            out += "&lt;";
        else if (c == '>')
            out += "&gt;";
        else if (c == '"')
            out += "&quot;";
        else if (c == '\'')
            out += "&#39;";
        else
            out += c;
    }
    return out;
}

std::string reportHtml(const ReportInput& in) {
    const std::string sheet = in.say({"%1", {byName(in.evaluation.setup.sheet.name)}});
    std::string out = "<!DOCTYPE html>\n<html lang=\"" + in.language + "\"><head><meta charset=\"utf-8\"><title>" +
                      escapeHtml(in.say({"Sensor report: %1", {sheet}})) + "</title><style>" + kStyle +
                      "</style></head><body>\n<h1>" + escapeHtml(sheet) + "</h1>\n";
    out += paragraph(in, {"Report of a three-wire position sensor, measured with the key on and the engine off."},
                     "kind");
    out += verdictBox(in);
    if (in.evaluation.findings.overVoltage)
        out += paragraph(
            in, {{"It went over %1: stop, key off.", {volts(in.evaluation.setup.sheet.overVoltage_V())}}}, "caution");
    out += jobTable(in) + heading(in, "How it was measured") + measuredTable(in);
    out += heading(in, "Levels before and after") + levelsTable(in);
    out += heading(in, "Trace") + traceSvg(in);
    out += paragraph(in,
                     {"Bands are the windows of the sheet; wedges are dropouts, hatching is time in which the meter "
                      "was blind, broken lines begin a step."},
                     "key");
    for (const Section& s : reportSections(in.evaluation, in.path)) {
        if (s.lines.empty()) continue;
        out += heading(in, s.heading);
        for (const Line& line : s.lines) out += paragraph(in, line);
    }
    out += heading(in, "After the work, by hand") + closingTable(in) + limits(in);
    return out + "</body></html>\n";
}

} // namespace stillwire
