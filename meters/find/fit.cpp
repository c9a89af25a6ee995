// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/fit.hpp"

#include "meters/decode/decoder.hpp"

#include <algorithm>
#include <tuple>

namespace stillwire {

namespace {

constexpr std::size_t kSure = 3, kLikely = 2; // readings
constexpr double kSureDropped = 0.02, kLikelyDropped = 0.10, kMostDropped = 0.50;

// Could frames like these come about by accident, or from a meter of another kind?
bool isSpecific(const FrameSettings& frame, const Heard& heard) {
    switch (frame.kind) {
    case FrameKind::segments:
    case FrameKind::ascii: return true;
    case FrameKind::scpi: return false; // a bare number is anybody's
    case FrameKind::text:
    case FrameKind::polled: break;
    }
    return !frame.pattern.empty() || std::find(heard.bytes.begin(), heard.bytes.end(), 'V') != heard.bytes.end();
}

Sureness judge(const Fit& fit, bool specific) {
    const double dropped = fit.bytes > 0 ? static_cast<double>(fit.dropped) / static_cast<double>(fit.bytes) : 0;
    if (fit.readings == 0 || dropped > kMostDropped) return Sureness::none;
    if (fit.readings >= kSure && dropped <= kSureDropped && specific) return Sureness::sure;
    if (fit.readings >= kLikely && dropped <= kLikelyDropped) return Sureness::likely;
    return Sureness::possible;
}

} // namespace

Fit fitOf(const MeterDescription& description, const Heard& heard, bool identified) {
    Fit fit;
    fit.bytes = heard.bytes.size();
    const auto decoder = makeDecoder(description);
    std::vector<Reading> readings;
    std::size_t at = 0, torn = 0; // dropped before the first reading: the rest of a frame, or noise of the opening
    for (const Heard::Arrival& arrival : heard.arrivals) {
        for (const std::size_t end = at + arrival.bytes; at < end; ++at) {
            decoder->push(std::span(heard.bytes).subspan(at, 1), arrival.at, readings);
            if (readings.empty()) torn = decoder->droppedBytes();
        }
    }
    fit.dropped = decoder->droppedBytes() - torn;
    // What was dropped at the start is forgiven only if it may be one torn frame.
    if (!readings.empty() && torn > fit.bytes / readings.size()) fit.dropped += torn;
    fit.readings = readings.size();
    for (const Reading& reading : readings) fit.volts += reading.hasNumber() ? 1u : 0u;
    if (!readings.empty()) fit.newest = readings.back();
    if (readings.size() > 1)
        fit.interval_s =
            toSeconds(readings.back().time - readings.front().time) / static_cast<double>(readings.size() - 1);
    fit.sureness = judge(fit, identified || isSpecific(description.frame, heard));
    return fit;
}

bool fitsBetter(const Fit& a, const Fit& b) {
    const auto rank = [](const Fit& fit) {
        return std::tuple(fit.sureness, fit.volts > 0, fit.readings, -static_cast<double>(fit.dropped));
    };
    return rank(a) > rank(b);
}

} // namespace stillwire
