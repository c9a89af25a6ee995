// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/find_meter.hpp"

#include "meters/find/port_search.hpp"

namespace stillwire {

namespace {

std::string rateText(const LinkSettings& link) { return std::to_string(link.baud) + " " + framingText(link); }

std::string linesText(const LinkSettings& link) {
    return std::string("DTR ") + (link.dtr ? "up" : "down") + ", RTS " + (link.rts ? "up" : "down");
}

Sentence matchSays(const MeterMatch& match) {
    const std::string readings = std::to_string(match.fit.readings), bytes = std::to_string(match.fit.bytes),
                      dropped = std::to_string(match.fit.dropped), at = rateText(match.link);
    switch (match.fit.sureness) {
    case Sureness::sure:
        return {"%1 fits, that is sure: %2 readings from %3 bytes at %4, %5 bytes dropped.",
                {match.name, readings, bytes, at, dropped}};
    case Sureness::likely:
        return {"%1 fits, likely: %2 readings from %3 bytes at %4, %5 bytes dropped.",
                {match.name, readings, bytes, at, dropped}};
    default:
        return {"%1 is possible: %2 readings from %3 bytes at %4, %5 bytes dropped.",
                {match.name, readings, bytes, at, dropped}};
    }
}

// As the description would have to say it.
Sentence changeSays(const LinkSettings& link) {
    std::string keys = "baud = " + std::to_string(link.baud) + ", bits = " + std::to_string(link.bits);
    keys += link.parity == Parity::odd    ? ", parity = \"odd\""
            : link.parity == Parity::even ? ", parity = \"even\""
                                          : ", parity = \"none\"";
    keys += std::string(", dtr = ") + (link.dtr ? "true" : "false") + ", rts = " + (link.rts ? "true" : "false");
    return {"Its link settings are others than described: copy the description and write %1.", {keys}};
}

void bestSays(const MeterMatch& best, std::vector<Sentence>& out) {
    out.push_back(matchSays(best));
    if (!best.asDescribed) out.push_back(changeSays(best.link));
    if (!best.identity.empty()) out.push_back({"It says it is %1.", {best.identity}});
    if (best.fit.volts > 0 && best.fit.newest && best.fit.newest->hasNumber())
        out.push_back({"It shows %1 now.", {volts(best.fit.newest->volts_V, 3)}});
    if (best.fit.volts == 0) out.push_back({"It does not show DC volts now: turn it to DC volts.", {}});
}

} // namespace

std::vector<Sentence> findingSays(const PortFinding& finding) {
    std::vector<Sentence> out;
    if (!finding.trouble.empty()) {
        out.push_back({"%1.", {finding.trouble}});
    } else if (!finding.matches.empty()) {
        bestSays(finding.matches.front(), out);
        for (std::size_t i = 1; i < finding.matches.size(); ++i) out.push_back(matchSays(finding.matches[i]));
    } else if (finding.heard.bytes.empty()) {
        out.push_back({"Nothing came. Switch the meter on, press its data-output key, and look at the lead.", {}});
    } else {
        out.push_back({"No description fits. At %1, %2, the bytes look like this: %3.",
                       {rateText(finding.heardWith), linesText(finding.heardWith), likenessSays(finding.look)}});
        if (finding.look.interval_s > 0)
            out.push_back({"Something comes every %1.", {seconds(finding.look.interval_s)}});
        out.push_back({"meters/README.md tells how to describe a new meter.", {}});
    }
    return out;
}

Sentence progressSays(const FindProgress& progress) {
    const std::string step = std::to_string(progress.step), of = std::to_string(progress.of);
    if (progress.asking)
        return {"%1 of %2: asking on %3 at %4, %5",
                {step, of, progress.port, rateText(progress.link), linesText(progress.link)}};
    return {"%1 of %2: listening on %3 at %4, %5",
            {step, of, progress.port, rateText(progress.link), linesText(progress.link)}};
}

std::vector<PortFinding> findMeters(const FindPlan& plan, const LinkMaker& makeLink,
                                    const std::function<void(const FindProgress&)>& told,
                                    const std::stop_token& stop) {
    std::vector<PortFinding> out;
    int before = 0;
    for (const std::string& port : plan.ports) {
        if (stop.stop_requested()) break;
        PortSearch search(plan, port, makeLink, [&](FindProgress progress) {
            progress.step += before;
            progress.of = before + progress.of * static_cast<int>(plan.ports.size() - out.size());
            told(progress);
        });
        out.push_back(search.run(stop));
        before += search.stepsDone();
    }
    return out;
}

} // namespace stillwire
