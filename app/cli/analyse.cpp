// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/json.hpp"
#include "app/cli/spoken.hpp"
#include "app/shared/evaluate.hpp"
#include "core/procedure/texts.hpp"

#include <iomanip>
#include <iostream>

namespace stillwire {

Status runAnalyse(const Options& o) {
    auto evaluation = evaluateCapture(o.file, {o.sheet, o.meter, o.import});
    if (!evaluation) return evaluation.error();
    std::cout << (o.json ? findingsJson(*evaluation) : spokenReport(*evaluation, o.file));
    return Done{};
}

namespace {

// Tells a capture as it goes by: steps in words, other marks as they stand, what the wire did by the reading that
// shows it.
class Teller {
public:
    void mark(const Mark& m) {
        if (m.as<PoseMark>()) {
            ++poses_;
            return;
        }
        tellPoses(m.time);
        if (m.as<StepEndMark>()) return;
        const auto* opened = m.as<StepMark>();
        if (!opened) {
            stamp(m.time) << m.text() << "\n";
            return;
        }
        const StepText& text = stepText(opened->step);
        std::cout << "\n";
        stamp(m.time) << text.title << "\n";
        for (const char* caution : text.cautions) std::cout << "             ! " << caution << "\n";
        std::cout << "             " << text.instruction << "\n";
    }

    void reading(const Reading& r, const PushResult& p) {
        if (p.dropoutFlagged)
            stamp(r.time) << "dropped " << (p.direction == Direction::down ? "down" : "up") << ", shows "
                          << volts(r.volts_V) << "\n";
        if (p.jumped) stamp(r.time) << "moved by itself, shows " << volts(r.volts_V) << "\n";
        if (p.state == WireState::blind && last_ != WireState::blind) stamp(r.time) << "blind\n";
        if (p.state == WireState::overVoltage && last_ != WireState::overVoltage)
            stamp(r.time) << "over 5.5 V, shows " << volts(r.volts_V) << ": stop, key off\n";
        last_ = p.state;
    }

    void tellPoses(Time t) {
        if (poses_ > 0) stamp(t) << poses_ << (poses_ == 1 ? " pose" : " poses") << " held\n";
        poses_ = 0;
    }

private:
    static std::ostream& stamp(Time t) {
        return std::cout << std::setw(9) << std::fixed << std::setprecision(1) << toSeconds(t) << " s  ";
    }
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
    teller.tellPoses(evaluation->findings.duration);
    std::cout << "\n" << spokenVerdict(evaluation->findings, evaluation->setup.sheet);
    return Done{};
}

} // namespace stillwire
