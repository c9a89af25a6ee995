// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/analyse/blind_mend.hpp"

#include <algorithm>

namespace stillwire {

namespace {

Sentence mendFor(BlindCause cause, const BlindTime& time) {
    const std::string longest = seconds(time.longest_s), total = seconds(time.total_s);
    switch (cause) {
    case BlindCause::autorange:
        if (time.spans >= kHunting)
            return {"Lock the range: the meter changed it %1 times and was blind for %2 in all.",
                    {std::to_string(time.spans), total}};
        return {"Lock the range: it went blind for %1.", {longest}};
    case BlindCause::gap:
        return {"Nothing came from the meter for %1: look at its cable, and switch its auto-off off.", {longest}};
    case BlindCause::overload:
        return {"The meter showed overload for %1: lock a range that holds 6 V, and check the leads.", {longest}};
    case BlindCause::hold: return {"Hold was on for %1: press the hold key.", {longest}};
    case BlindCause::frozen:
        return {"The number stood still for %1, more than its own noise allows: switch the meter off and on again.",
                {longest}};
    case BlindCause::unit:
        return {"The meter did not show plain DC volts for %1: turn it to DC volts, relative and low-impedance mode "
                "off.",
                {longest}};
    }
    return {};
}

} // namespace

BlindTime blindTime(const std::vector<BlindSpan>& blind, BlindCause cause, Time from, Time to) {
    BlindTime out;
    for (const BlindSpan& span : blind) {
        const Time begin = std::max(span.from, from), end = std::min(span.to, to);
        if (span.cause != cause || end <= begin) continue;
        ++out.spans;
        out.total_s += toSeconds(end - begin);
        out.longest_s = std::max(out.longest_s, toSeconds(end - begin));
    }
    return out;
}

Sentence blindMend(const std::vector<BlindSpan>& blind, Time from, Time to) {
    Sentence out;
    double most_s = 0;
    for (const BlindCause cause : {BlindCause::autorange, BlindCause::gap, BlindCause::overload, BlindCause::hold,
                                   BlindCause::frozen, BlindCause::unit}) {
        const BlindTime time = blindTime(blind, cause, from, to);
        if (time.total_s <= most_s) continue;
        most_s = time.total_s;
        out = mendFor(cause, time);
    }
    return out;
}

} // namespace stillwire
