// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/activity.hpp"

namespace stillwire {

double Bench::interval_s() const {
    if (findings->meter.interval_s > 0) return findings->meter.interval_s;
    return meter.interval_s > 0 ? meter.interval_s : 0.33;
}

const PositionLevel* Bench::position(const std::string& name) const {
    for (const PositionLevel& p : findings->positions)
        if (p.name == name) return &p;
    return nullptr;
}

const StepCoverage* Bench::coverage(Step step) const {
    for (const StepCoverage& s : findings->steps)
        if (s.step == step && s.section.empty()) return &s;
    return nullptr;
}

const Visit* Bench::visitSince(const std::string& name, Time since) const {
    const PositionLevel* p = position(name);
    if (p == nullptr || p->visits.empty()) return nullptr;
    const Visit& last = p->visits.back();
    return last.from >= since ? &last : nullptr;
}

std::unique_ptr<Activity> makeActivity(const PathEntry& entry, const ProcedureOptions& options) {
    const Step step = entry.step;
    switch (step) {
    case Step::hookUp: return makeHookUp(options.endStepsByEvidence);
    case Step::reference:
    case Step::ground: return makeWireReading(step);
    case Step::coldStart: return makeColdStart();
    case Step::leadCheck:
    case Step::wiggleShaft:
    case Step::wiggleHarness:
    case Step::warmRepeat:
    case Step::connectorHeld:
    case Step::wiggleReference:
    case Step::wiggleGround: return makePoses(step, static_cast<int>(options.sections.size()), entry.armHeld);
    case Step::fullPress:
    case Step::release:
    case Step::confirm: return makeVisits(step);
    case Step::sweep: return makeSweep();
    case Step::lift: return makeLift(options.endStepsByEvidence);
    case Step::adjust: return makeAdjust();
    case Step::putBack: return makePutBack();
    }
    return nullptr;
}

} // namespace stillwire
