// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/html.hpp"

#include "app/cli/spoken.hpp"

namespace stillwire {

namespace {

constexpr const char* kStyle = R"(
@page { size: A4; margin: 16mm; }
body { font: 11pt/1.45 "B612", sans-serif; color: #14212B; background: #fff; max-width: 48em; margin: auto; }
h1 { font-size: 17pt; margin: 0 0 .2em; } h2 { font-size: 12pt; margin: 1.1em 0 .2em; border-bottom: 1px solid #14212B; }
p { margin: .25em 0; } .verdict { border: 2px solid #14212B; padding: .5em .8em; font-size: 13pt; }
table { border-collapse: collapse; width: 100%; } td { border-bottom: 1px solid #3A4751; padding: .3em .4em; vertical-align: top; }
td:first-child { width: 32%; } td:last-child { min-height: 1.4em; }
svg { width: 100%; } svg text { font-size: 11px; fill: #14212B; } svg text.small { font-size: 9px; }
.trace { fill: none; stroke: #0B4A7A; stroke-width: 1.2; } .window { fill: #BFDDEE; } .grid { stroke: #ccc; }
.step { stroke: #3A4751; stroke-dasharray: 3 3; } .dropout { fill: #8C2F00; } .blind { fill: url(#hatch); }
h2, .verdict, svg, tr { break-inside: avoid; } h2 { break-after: avoid; }
)";

std::string row(const std::string& name, const std::string& value) {
    return "<tr><td>" + escapeHtml(name) + "</td><td>" + escapeHtml(value) + "</td></tr>\n";
}

std::string particulars(const ReportInput& in) {
    const CaptureHeader& h = in.evaluation.header;
    const ExaminationSetup& s = in.evaluation.setup;
    std::string out = "<table>\n";
    out += row("Machine, hours", "") + row("Complaint", "") + row("Technician", "");
    out += row("Recorded", h.started.empty() ? "not known" : h.started);
    out += row("Notes", h.notes);
    out += row("Sensor sheet", s.sheet.name + (s.sheet.source.empty() ? "" : " (figures: " + s.sheet.source + ")"));
    out += row("Meter", s.meterKnown ? s.meter.name : "not described; accuracy of 1 % + 5 counts assumed");
    out += row("Probe", h.probe == ProbeSide::sensorSide ? "sensor side of the connector"
                                                         : "controller side of the connector");
    out += row("Black lead", h.black == BlackLead::batteryNegative ? "battery negative" : "sensor ground");
    out += row("Capture", in.path);
    out += row("SHA-256 of its readings", in.hash);
    out += row("Part fitted, torque, relearn", "") + row("Pierced wire sealed at", "");
    return out + "</table>\n";
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
    const Verdict& v = in.evaluation.findings.verdict;
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Sensor report: " +
                      escapeHtml(in.evaluation.setup.sheet.name) + "</title><style>" + kStyle +
                      "</style></head><body>\n<h1>" + escapeHtml(in.evaluation.setup.sheet.name) +
                      "</h1>\n<p class=\"verdict\">" + decisionSentence(v.decision) + "</p>\n" + particulars(in) +
                      "<h2>Trace</h2>\n" + traceSvg(in.evaluation.findings, in.trace, in.marks);
    for (const Section& s : reportSections(in.evaluation, in.path)) {
        if (s.sentences.empty()) continue;
        out += "<h2>" + escapeHtml(s.heading) + "</h2>\n";
        for (const std::string& sentence : s.sentences) out += "<p>" + escapeHtml(sentence) + "</p>\n";
    }
    out += "<h2>Limits of this report</h2>\n<p>A slow meter averages: depths are at least what is printed, and "
           "dropouts shorter than the "
           "meter can see stay unseen. The maker's service literature comes before anything said here.</p>\n";
    return out + "</body></html>\n";
}

} // namespace stillwire
