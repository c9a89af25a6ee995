// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/cli/made_capture.hpp"

#include <cstdio>
#include <sstream>

namespace stillwire::testing {

namespace {

// One level down in the header: [reference] is [sheet.reference], [[position]] is [[sheet.position]].
std::string nested(const std::string& toml, const std::string& under) {
    std::istringstream in(toml);
    std::string out = "# [" + under + "]\n", line;
    while (std::getline(in, line)) {
        if (line.starts_with("[["))
            line = "[[" + under + "." + line.substr(2);
        else if (line.starts_with("["))
            line = "[" + under + "." + line.substr(1);
        out += "# " + line + "\n";
    }
    return out;
}

class Writer {
public:
    explicit Writer(bool marks) : marks_(marks) {}
    void mark(const std::string& text) {
        if (marks_) row("", text);
    }
    void read(double v_V, double length_s) {
        for (double until_s = time_s_ + length_s; time_s_ < until_s; time_s_ += 0.33) {
            noise_ = noise_ * 1103515245U + 12345U;
            const int counts = static_cast<int>(noise_ >> 16U) % 3 - 1;
            char text[32];
            std::snprintf(text, sizeof text, "%.3f", v_V + 0.001 * counts);
            row(text, "");
        }
    }
    std::string rows;

private:
    void row(const std::string& volts, const std::string& mark) {
        char time[32];
        std::snprintf(time, sizeof time, "%.2f", time_s_);
        rows += std::string(time) + "," + volts + ",," + mark + "\n";
    }
    bool marks_;
    double time_s_ = 0;
    unsigned noise_ = 1;
};

void poses(Writer& w, const Wanted& want, bool harness) {
    for (int i = 0; i < want.poses; ++i) {
        w.mark(std::string(harness ? "pose:section-1/" : "pose:") + (i % 2 == 0 ? "left" : "right"));
        const bool drops = want.dropoutsInShaft && !harness && i % 5 == 2;
        w.read(want.released_V, 0.5);
        w.read(drops ? want.released_V - 0.45 : want.released_V, 0.5);
        w.read(want.released_V, 0.4);
    }
}

void visit(Writer& w, const char* name, double v_V) {
    w.mark(std::string("position:") + name);
    w.read(v_V, 4);
}

} // namespace

std::string madeCapture(const Wanted& want) {
    std::string head;
    if (want.header) head = "# format = 1\n# started = 2026-01-12T06:40:00+01:00\n# notes = \"made by a test\"\n";
    if (want.header && want.sheet) head += nested(test::kPedalSheet, "sheet");
    if (want.header && want.meter) head += nested(kMeterToml, "meter");
    Writer w(want.marks);
    w.mark("step:hook-up");
    w.mark("key:on");
    w.mark("step:reference");
    w.read(want.reference_V, 6);
    w.mark("step:end");
    w.mark("step:ground");
    w.read(want.ground_V, 6);
    w.mark("step:end");
    w.mark("step:cold-start");
    w.mark("position:released");
    w.read(want.released_V, 32);
    w.mark("step:wiggle-shaft");
    poses(w, want, false);
    w.mark("step:wiggle-harness");
    poses(w, want, true);
    w.mark("step:full-press");
    visit(w, "pressed", want.pressed_V);
    visit(w, "released", want.released_V);
    w.mark("step:release");
    for (int i = 0; i < 4; ++i) {
        visit(w, "pressed", want.pressed_V);
        visit(w, "released", want.released_V);
    }
    w.mark("step:end");
    w.mark("key:off");
    return head + "time_s,volts,flags,mark\n" + w.rows;
}

} // namespace stillwire::testing
