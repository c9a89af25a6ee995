// SPDX-License-Identifier: GPL-3.0-or-later
// Which readings have to be seen, when the meter was blind, and how it all comes together.
#include "tests/core/families/truth.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillwire::families {

double memory_s(const Meter& meter) {
    double filter = meter.meanOf - 1;
    if (meter.firstOrder > 0) filter = 3 / meter.firstOrder - 1;
    return meter.aperture_s + (filter + meter.refresh - 1) * meter.interval_s;
}

double silenceLimit_s(const Meter& meter) { return std::max(2.5 * meter.interval_s, 0.5); }

double shortestStay_s(const Meter& meter) { return std::max(2.0, 5 * meter.interval_s); }

void tellRequired(const Wire& wire, Trace& trace) {
    const std::vector<Dropout>& all = wire.dropouts;
    // The return before dropout i lies between whatever ended last and i.
    std::vector<double> before_s(all.size() + 1, std::numeric_limits<double>::infinity());
    double ended_s = -before_s[0];
    for (std::size_t i = 0; i < all.size(); ++i) {
        before_s[i] = all[i].from_s - ended_s;
        ended_s = std::max(ended_s, all[i].to_s);
    }
    std::vector<TrueReading>& readings = trace.truth.readings;
    const double whole_s = trace.meter.aperture_s + (trace.meter.refresh - 1) * trace.meter.interval_s;
    const bool filtered = trace.meter.meanOf > 1 || trace.meter.firstOrder > 0;
    for (std::size_t i = 0; i < readings.size();) {
        if (!readings[i].touched()) {
            ++i;
            continue;
        }
        std::size_t end = i;
        bool several = false;
        for (; end < readings.size() && readings[end].touched(); ++end)
            several = several || readings[end].dropout != readings[i].dropout;
        for (; i < end; ++i) {
            TrueReading& r = readings[i];
            r.clear = trace.readings[i].hasNumber() && std::abs(r.off_V) >= r.border_V();
            const auto d = static_cast<std::size_t>(r.dropout);
            // A filter that still remembers the one before never shows the return.
            const bool returns = before_s[d] >= whole_s && before_s[d + 1] >= whole_s && !(filtered && several);
            r.required = r.clear && returns;
        }
    }
}

void tellBlind(Trace& trace) {
    const Meter& meter = trace.meter;
    std::size_t last = trace.readings.size();
    for (std::size_t i = 0; i < trace.readings.size(); ++i) {
        if (!trace.readings[i].hasNumber()) continue;
        if (last < i) {
            const double silent_s = trace.truth.readings[i].at_s - trace.truth.readings[last].at_s;
            const bool flagged = last + 1 < i;
            const Span span{toSeconds(trace.readings[last].time), toSeconds(trace.readings[i].time)};
            const double limit_s = silenceLimit_s(meter);
            if (flagged || silent_s > 1.15 * limit_s + meter.stampSlack_s()) trace.truth.blind.push_back(span);
            if (flagged || silent_s > 1.6 * meter.interval_s) trace.truth.blindPossible.push_back(span);
        }
        last = i;
    }
}

void tellTruth(const Wire& wire, Trace& trace) {
    trace.truth.duration_s = wire.now_s();
    trace.truth.holds = wire.holds;
    trace.truth.unasked = wire.unasked;
    tellRequired(wire, trace);
    tellBlind(trace);
    tellMoves(wire, trace);
    tellPlateaus(wire, trace);
    tellWiggles(wire, trace);
    tellCalm(wire, trace);
}

Trace record(Wire wire, const Meter& meter, Dice& dice) {
    wire.settle();
    Trace trace;
    trace.meter = meter;
    takeReadings(wire, meter, dice, trace);
    tellTruth(wire, trace);
    trace.meterToml = meterFor(meter);
    return trace;
}

} // namespace stillwire::families
