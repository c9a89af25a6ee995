// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/json.hpp"
#include "app/cli/spoken.hpp"
#include "app/shared/evaluate.hpp"
#include "core/judge/phrases.hpp"
#include "core/procedure/texts.hpp"

#include <algorithm>
#include <iomanip>
#include <iostream>

namespace stillwire {

Status runAnalyse(const Options& o) {
    if (o.explain) return runExplain(o);
    auto evaluation = evaluateCapture(o.file, {o.sheet, o.meter, o.import});
    if (!evaluation) return evaluation.error();
    std::cout << (o.json ? findingsJson(*evaluation) : spokenReport(*evaluation, o.file));
    return Done{};
}

namespace {

// A capture as it goes by: steps in words, other marks as they stand, what the wire did by the reading that shows it.
// Told once it is whole, so that what a later reading took back says so.
class Teller {
public:
    void mark(const Mark& m) {
        if (m.as<PoseMark>()) {
            ++poses_;
            return;
        }
        addPoses(m.time);
        if (m.as<StepEndMark>()) return;
        const auto* opened = m.as<StepMark>();
        if (!opened) {
            add(m.time, m.text());
            return;
        }
        const StepText& text = stepText(opened->step);
        add(m.time, text.title).before = "\n";
        for (const char* caution : text.cautions) below(std::string("! ") + caution);
        below(text.instruction);
    }

    void reading(const Reading& r, const PushResult& p) {
        if (p.dropoutFlagged)
            add(r.time, std::string("dropped ") + (p.direction == Direction::down ? "down" : "up") + ", shows " +
                            volts(r.volts_V))
                .kind = Kind::dropped;
        if (p.jumped) add(r.time, "moved by itself, shows " + volts(r.volts_V)).kind = Kind::jumped;
        if (p.state == WireState::blind && last_ != WireState::blind) add(r.time, "blind");
        if (p.state == WireState::overVoltage && last_ != WireState::overVoltage)
            add(r.time, "over 5.5 V, shows " + volts(r.volts_V) + ": stop, key off");
        last_ = p.state;
    }

    void tell(const Findings& found) {
        addPoses(found.duration);
        for (const Line& line : lines_)
            std::cout << line.before << std::setw(9) << std::fixed << std::setprecision(1) << toSeconds(line.at)
                      << " s  " << line.text << afterwards(line, found) << "\n"
                      << line.below;
    }

private:
    enum class Kind { other, dropped, jumped };
    struct Line {
        Time at{0};
        std::string before, text, below;
        Kind kind = Kind::other;
    };

    Line& add(Time t, std::string text) {
        lines_.push_back({t, {}, std::move(text), {}, Kind::other});
        return lines_.back();
    }
    void below(const std::string& text) { lines_.back().below += "             " + text + "\n"; }
    void addPoses(Time t) {
        if (poses_ > 0) add(t, std::to_string(poses_) + (poses_ == 1 ? " pose held" : " poses held"));
        poses_ = 0;
    }

    // What became of it once more had been read.
    static std::string afterwards(const Line& line, const Findings& found) {
        if (line.kind == Kind::jumped) {
            const bool stands = std::any_of(found.jumps.begin(), found.jumps.end(), [&](const LevelJump& j) {
                return j.at <= line.at && line.at - j.at <= fromSeconds(3 * found.meter.interval_s);
            });
            return stands ? "" : " (taken back: it does not count as a jump)";
        }
        if (line.kind != Kind::dropped) return "";
        const auto e = std::find_if(found.excursions.begin(), found.excursions.end(),
                                    [&](const Excursion& one) { return one.from <= line.at && line.at <= one.to; });
        if (e == found.excursions.end()) return " (taken back: it was no dropout)";
        switch (e->kind) {
        case ExcursionKind::dropout: break;
        case ExcursionKind::play: return " (play, which has no vote)";
        case ExcursionKind::aside: return " (set aside: " + likelySaid(e->likely).english() + ")";
        }
        return "";
    }

    std::vector<Line> lines_;
    WireState last_ = WireState::silent;
    int poses_ = 0;
};

} // namespace

Status runReplay(const Options& o) {
    Teller teller;
    Watcher watcher;
    watcher.mark = [&](const Mark& m, const Examination&) { teller.mark(m); };
    watcher.reading = [&](const Reading& r, const PushResult& p, const Examination&) { teller.reading(r, p); };
    auto evaluation = evaluateCapture(o.file, {o.sheet, o.meter, o.import}, watcher);
    if (!evaluation) return evaluation.error();
    teller.tell(evaluation->findings);
    std::cout << "\n" << spokenReport(*evaluation, o.file);
    return Done{};
}

} // namespace stillwire
