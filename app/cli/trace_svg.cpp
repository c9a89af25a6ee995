// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/html.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire {

namespace {

constexpr double kWidth = 960, kHeight = 330, kLeft = 40, kTop = 10, kBottom = 75;
constexpr double kBetweenNames = 13;
constexpr std::size_t kColumns = 900;

struct Scale {
    double to_s, low_V, high_V;
    [[nodiscard]] std::string x(Time t) const {
        return plain(kLeft + (kWidth - kLeft) * toSeconds(t) / std::max(to_s, 1e-3), 1);
    }
    [[nodiscard]] std::string y(double v_V) const { return plain(at(v_V), 1); }
    [[nodiscard]] double at(double v_V) const {
        return kTop + (kHeight - kTop - kBottom) * (high_V - v_V) / (high_V - low_V);
    }
};

std::string box(const std::string& x, double y, double width, double height, const char* kind) {
    return "<rect class=\"" + std::string(kind) + "\" x=\"" + x + "\" y=\"" + plain(y, 1) + "\" width=\"" +
           plain(width, 1) + "\" height=\"" + plain(height, 1) + "\"/>\n";
}

std::string windows(const ReportInput& in, const Scale& scale) {
    std::string out;
    for (const PositionLevel& p : in.evaluation.findings.positions) {
        const double top = scale.at(p.window_V.max_V), bottom = scale.at(p.window_V.min_V);
        out += box(plain(kLeft, 1), top, kWidth - kLeft, bottom - top, "window");
        out += "<text x=\"" + plain(kLeft + 4, 0) + "\" y=\"" + plain(top - 3, 1) + "\">" +
               escapeHtml(in.say({"%1", {byName(p.name)}})) + "</text>\n";
    }
    return out;
}

std::string line(const TraceSnapshot& trace, Time from, Time to, const Scale& scale) {
    const auto slices = trace.extremes(from, to, kColumns);
    const double slice_us = static_cast<double>((to - from).count()) / static_cast<double>(kColumns);
    std::string out = "<path class=\"trace\" d=\"";
    bool pen = false;
    for (std::size_t i = 0; i < slices.size(); ++i) {
        if (slices[i].count == 0) continue;
        const Time at = from + Time(std::llround(slice_us * (static_cast<double>(i) + 0.5)));
        const std::string x = scale.x(at);
        out += (pen ? "L" : "M") + x + " " + scale.y(slices[i].max_V);
        if (slices[i].min_V < slices[i].max_V) out += "L" + x + " " + scale.y(slices[i].min_V);
        pen = true;
    }
    return out + "\"/>\n";
}

std::string wedge(const Excursion& e, const Scale& scale) {
    const double x = kLeft + (kWidth - kLeft) * toSeconds(e.from) / std::max(scale.to_s, 1e-3);
    const double y = scale.at(e.extreme_V), way = e.direction == Direction::down ? 1 : -1;
    return "<path class=\"dropout\" d=\"M" + plain(x, 1) + " " + plain(y, 1) + "l-5 " + plain(way * 11, 1) +
           "h10z\"/>\n";
}

std::string axis(const Scale& scale) {
    std::string out;
    for (int v = 0; v <= static_cast<int>(scale.high_V); ++v)
        out += "<path class=\"grid\" d=\"M" + plain(kLeft, 0) + " " + scale.y(v) + "H" + plain(kWidth, 0) +
               "\"/><text x=\"4\" y=\"" + plain(scale.at(v) + 4, 1) + "\">" + std::to_string(v) + " V</text>\n";
    const double step_s = std::max(1.0, std::ceil(scale.to_s / 8 / 30) * 30);
    for (double t = 0; t <= scale.to_s; t += step_s)
        out += "<text x=\"" + scale.x(fromSeconds(t)) + "\" y=\"" + plain(kHeight - 4, 0) + "\">" + plain(t, 0) +
               " s</text>\n";
    return out;
}

} // namespace

std::string traceSvg(const ReportInput& in) {
    const Findings& f = in.evaluation.findings;
    const TraceSnapshot& trace = in.trace;
    if (trace.empty()) return "<p>" + escapeHtml(in.say("The capture holds no readings.")) + "</p>\n";
    const Time end = std::max(trace[trace.size() - 1].time, Time(1)) + Time(1);
    const TraceExtremes all = trace.extremes(Time(0), end, 1).front();
    double high = 5.2, low = -0.1;
    if (all.count > 0) {
        high = std::max(high, all.max_V + 0.2);
        low = std::min(low, all.min_V - 0.2);
    }
    const Scale scale{toSeconds(end), low, high};
    std::string out = "<svg viewBox=\"0 0 " + plain(kWidth, 0) + " " + plain(kHeight, 0) +
                      "\" role=\"img\" aria-label=\"" +
                      escapeHtml(in.say("The trace over the windows of the sheet")) +
                      "\">\n"
                      "<defs><pattern id=\"hatch\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
                      "patternTransform=\"rotate(45)\"><path d=\"M0 0V6\" stroke=\"#3A4751\"/></pattern></defs>\n";
    out += windows(in, scale) + axis(scale);
    for (const BlindSpan& b : f.blind) {
        const double width = (kWidth - kLeft) * toSeconds(b.to - b.from) / scale.to_s;
        out += box(scale.x(b.from), kTop, std::max(1.0, width), kHeight - kTop - kBottom, "blind");
    }
    double free = 0; // where the next name of a step has room
    for (const Mark& m : in.marks)
        if (const auto* opened = m.as<StepMark>()) {
            const double x = kLeft + (kWidth - kLeft) * toSeconds(m.time) / std::max(scale.to_s, 1e-3);
            const double label = std::max(x, free);
            free = label + kBetweenNames;
            out += "<path class=\"step\" d=\"M" + plain(x, 1) + " " + plain(kTop, 0) + "V" +
                   plain(kHeight - kBottom, 0) + "L" + plain(label, 1) + " " + plain(kHeight - kBottom + 6, 0) +
                   "\"/><text transform=\"translate(" + plain(label, 1) + " " + plain(kHeight - kBottom + 12, 0) +
                   ") rotate(50)\" class=\"small\">" +
                   escapeHtml(in.say({"%1", {byName(std::string(stepName(opened->step)))}})) + "</text>\n";
        }
    out += line(trace, Time(0), end, scale);
    for (const Excursion& e : f.excursions)
        if (e.kind == ExcursionKind::dropout) out += wedge(e, scale);
    return out + "</svg>\n";
}

} // namespace stillwire
