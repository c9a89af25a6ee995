// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/find/port_search.hpp"

#include "meters/decode/scpi_answer.hpp"

#include <algorithm>
#include <array>
#include <poll.h>

namespace stillwire {

namespace {

// The rates meters and instruments use, the likelier first. Common practice, no source.
constexpr std::array<int, 9> kRates = {9600, 2400, 19200, 4800, 115200, 38400, 57600, 1200, 600};
constexpr std::array<int, 4> kInstrumentRates = {9600, 115200, 19200, 57600};
constexpr double kIntervals = 3.5; // of a meter, to hear three frames of it
constexpr double kAnswer_s = 1.0;  // an instrument takes to answer
constexpr int kPolls = 3;
constexpr std::size_t kMostBytes = 4096; // of one trial
constexpr int kStop_ms = 100;            // a stop is heeded within

bool sameSettings(const LinkSettings& a, const LinkSettings& b) {
    return a.baud == b.baud && a.bits == b.bits && a.parity == b.parity && a.stopBits == b.stopBits &&
           a.flow == b.flow && a.dtr == b.dtr && a.rts == b.rts;
}

bool sameLines(const LinkSettings& a, const LinkSettings& b) { return a.dtr == b.dtr && a.rts == b.rts; }

bool isPolled(const MeterDescription& description) { return !description.link.pollCommand.empty(); }

// Only what a trial needs: no commands.
LinkSettings bare(const LinkSettings& link) {
    LinkSettings out = link;
    out.pollCommand.clear();
    out.startCommands.clear();
    out.leaveCommands.clear();
    return out;
}

// The settings of every description that sends by itself (or is polled), each once.
std::vector<LinkSettings> settingsOf(const std::vector<MeterCandidate>& candidates) {
    std::vector<LinkSettings> out;
    for (const MeterCandidate& candidate : candidates) {
        if (isPolled(candidate.description)) continue;
        const auto same = [&](const LinkSettings& s) { return sameSettings(s, candidate.description.link); };
        if (std::none_of(out.begin(), out.end(), same)) out.push_back(bare(candidate.description.link));
    }
    return out;
}

// How much a person can make of it.
double readability(const Likeness& look) {
    const double form = look.shape == ByteShape::lcdFrames   ? 3
                        : look.shape == ByteShape::textLines ? 2
                        : look.shape == ByteShape::packets   ? 0.5
                                                             : 0;
    return look.bytes == 0 ? -1 : form + look.printable + (look.line.empty() ? 0 : 0.5);
}

} // namespace

PortSearch::PortSearch(const FindPlan& plan, std::string port, const LinkMaker& makeLink, Told told)
    : plan_(plan), makeLink_(makeLink), told_(std::move(told)) {
    found_.port = std::move(port);
    progress_.port = found_.port;
    progress_.of = static_cast<int>(settingsOf(plan.candidates).size() + plan.candidates.size() + kRates.size());
}

bool PortSearch::over(const std::stop_token& stop) const {
    return stop.stop_requested() || !found_.trouble.empty() ||
           (!found_.matches.empty() && found_.matches.front().fit.sureness == Sureness::sure);
}

PortFinding PortSearch::run(const std::stop_token& stop) {
    listenAsDescribed(stop);
    if (!anyUnasked_) askAsDescribed(stop);
    if (!anyUnasked_ && found_.matches.empty()) tryLines(stop);
    const bool found = !found_.matches.empty() && found_.matches.front().fit.sureness >= Sureness::likely;
    if (anyUnasked_ && !found)
        tryRates(stop);
    else if (!found)
        askAtOtherRates(stop);
    link_.reset();
    if (!opened_ && !stop.stop_requested()) found_.trouble = refusal_;
    std::stable_sort(found_.matches.begin(), found_.matches.end(),
                     [](const MeterMatch& a, const MeterMatch& b) { return fitsBetter(a.fit, b.fit); });
    return std::move(found_);
}

bool PortSearch::open(const LinkSettings& settings, bool asking) {
    link_.reset(); // one at a time holds the port
    heard_ = {};
    ++step_;
    progress_.step = step_;
    progress_.of = std::max(progress_.of, step_);
    progress_.link = settings;
    progress_.asking = asking;
    progress_.bytes = 0;
    link_ = makeLink_(found_.port, settings);
    const Status opened = link_->open();
    if (opened) {
        opened_ = true;
        told_(progress_);
        return true;
    }
    if (refusal_.empty()) refusal_ = opened.error().text();
    link_.reset();
    return false;
}

void PortSearch::hear(double seconds_s, const std::stop_token& stop, const std::function<bool()>& enough) {
    std::array<std::uint8_t, 512> buffer{};
    const Time end = link_->now() + fromSeconds(seconds_s);
    while (!stop.stop_requested() && link_->now() < end && heard_.bytes.size() < kMostBytes) {
        pollfd waiting{link_->descriptor(), POLLIN, 0};
        const auto left_ms = static_cast<int>((end - link_->now()).count() / 1000 + 1);
        poll(&waiting, 1, std::clamp(left_ms, 1, kStop_ms));
        const LinkEvent event = link_->read(buffer);
        if (event.kind == LinkEvent::Kind::lost) {
            found_.trouble = found_.port + ": the adapter went away; put it back and look again";
            return;
        }
        if (event.kind != LinkEvent::Kind::bytes) continue;
        heard_.add(std::span(buffer).first(event.bytes), event.arrived);
        progress_.bytes = heard_.bytes.size();
        told_(progress_);
        if (enough()) return;
    }
}

void PortSearch::listenAsDescribed(const std::stop_token& stop) {
    for (const LinkSettings& settings : settingsOf(plan_.candidates)) {
        if (over(stop)) return;
        double longest_s = plan_.listen_s;
        for (const MeterCandidate& c : plan_.candidates)
            if (sameSettings(c.description.link, settings))
                longest_s = std::max(longest_s, kIntervals * c.description.traits.interval_s);
        if (!open(settings, false)) continue;
        hear(longest_s, stop, [&] {
            return std::any_of(plan_.candidates.begin(), plan_.candidates.end(), [&](const MeterCandidate& c) {
                return !isPolled(c.description) && sameSettings(c.description.link, settings) &&
                       fitOf(c.description, heard_).sureness == Sureness::sure;
            });
        });
        if (!heard_.bytes.empty() && !anyUnasked_) {
            anyUnasked_ = true;
            lines_ = settings;
        }
        weighAll(settings);
    }
}

// Every description that sends by itself, on what was heard under these settings; seven-bit text with its parity as
// what it is.
void PortSearch::weighAll(const LinkSettings& settings) {
    if (heard_.bytes.empty()) return;
    LinkSettings seen = settings;
    Heard heard = heard_;
    const Likeness look = likenessOf(heard_);
    if (look.parity && settings.bits == 8 && settings.parity == Parity::none) {
        seen.bits = 7;
        seen.parity = *look.parity;
        heard = sevenBits(heard_);
    }
    for (const MeterCandidate& candidate : plan_.candidates)
        if (!isPolled(candidate.description)) weigh(candidate, seen, heard, {});
    remember(seen);
}

void PortSearch::weigh(const MeterCandidate& candidate, const LinkSettings& settings, const Heard& heard,
                       const std::string& identity) {
    MeterMatch match{candidate.name, settings, sameSettings(settings, candidate.description.link),
                     fitOf(candidate.description, heard, !identity.empty()), identity};
    if (match.fit.sureness == Sureness::none) return;
    // Under other settings than its own, a match must be a good one: a stray number is no meter.
    if (!match.asDescribed && match.fit.sureness < Sureness::likely) return;
    auto same = std::find_if(found_.matches.begin(), found_.matches.end(),
                             [&](const MeterMatch& m) { return m.name == match.name; });
    if (same == found_.matches.end())
        found_.matches.push_back(std::move(match));
    else if (match.asDescribed >= same->asDescribed && fitsBetter(match.fit, same->fit))
        *same = std::move(match);
    std::stable_sort(found_.matches.begin(), found_.matches.end(),
                     [](const MeterMatch& a, const MeterMatch& b) { return fitsBetter(a.fit, b.fit); });
}

void PortSearch::remember(const LinkSettings& settings) {
    const Likeness look = likenessOf(heard_);
    if (readability(look) <= readability(found_.look)) return;
    found_.look = look;
    found_.heard = heard_;
    found_.heardWith = settings;
}

void PortSearch::askAsDescribed(const std::stop_token& stop) {
    if (!plan_.mayAsk) return;
    for (const MeterCandidate& candidate : plan_.candidates) {
        if (!isPolled(candidate.description)) continue;
        if (over(stop)) return;
        ask(candidate, bare(candidate.description.link), stop);
    }
}

// One that can say who it is is asked that first, and nothing else if it keeps silent: start-up commands change how
// an instrument is set up.
void PortSearch::ask(const MeterCandidate& candidate, const LinkSettings& settings, const std::stop_token& stop) {
    const LinkSettings& link = candidate.description.link;
    if (!open(settings, true)) return;
    std::string identity;
    if (!link.identifyCommand.empty()) {
        if (!converse(link.identifyCommand, kAnswer_s, stop)) return;
        std::string line(heard_.bytes.begin(), heard_.bytes.end());
        line.erase(std::min(line.find_last_not_of("\r\n ") + 1, line.size()));
        const auto answer = parseScpiAnswer(line);
        if (!answer || answer->kind != Answer::Kind::identity) return remember(settings);
        identity = answer->text;
        for (const std::string& command : link.startCommands) send(command);
        heard_ = {};
    }
    const double answer_s = std::max(kAnswer_s, 2 * candidate.description.traits.interval_s);
    for (int i = 0; i < kPolls; ++i)
        if (!converse(link.pollCommand, answer_s, stop)) break;
    if (!identity.empty())
        for (const std::string& command : link.leaveCommands) send(command);
    if (heard_.bytes.empty()) return;
    weigh(candidate, settings, heard_, identity);
    remember(settings);
}

// True if a whole line, or what may be a whole frame, came back.
bool PortSearch::converse(const std::string& command, double seconds_s, const std::stop_token& stop) {
    const std::size_t before = heard_.bytes.size();
    send(command);
    hear(seconds_s, stop, [&] {
        return heard_.bytes.size() > before && (heard_.bytes.back() == '\n' || heard_.bytes.back() == '\r');
    });
    return heard_.bytes.size() > before && found_.trouble.empty() && !stop.stop_requested();
}

void PortSearch::send(const std::string& command) {
    // A port that takes nothing answers nothing: the silence tells.
    (void)link_->write({reinterpret_cast<const std::uint8_t*>(command.data()), command.size()});
}

// An opto-isolated lead sends nothing until its lines are the way it wants them. Whatever the rate, something comes.
void PortSearch::tryLines(const std::stop_token& stop) {
    const std::vector<LinkSettings> tried = settingsOf(plan_.candidates);
    for (const auto& [dtr, rts] : {std::pair{true, true}, std::pair{true, false}, std::pair{false, true}}) {
        if (over(stop) || anyUnasked_) return;
        LinkSettings settings;
        settings.dtr = dtr;
        settings.rts = rts;
        const auto same = [&](const LinkSettings& s) { return sameLines(s, settings); };
        if (std::any_of(tried.begin(), tried.end(), same)) continue;
        if (!open(settings, false)) continue;
        hear(plan_.listen_s, stop, [] { return false; });
        anyUnasked_ = !heard_.bytes.empty();
        lines_ = settings;
        weighAll(settings);
    }
}

// With eight bits and no parity: a seven-bit sender shows by its parity bit.
void PortSearch::tryRates(const std::stop_token& stop) {
    for (const int rate : kRates) {
        if (over(stop)) return;
        LinkSettings settings;
        settings.baud = rate;
        settings.dtr = lines_.dtr;
        settings.rts = lines_.rts;
        if (!open(settings, false)) continue;
        hear(plan_.listen_s, stop, [&] { return heard_.arrivals.size() > 64 && heard_.bytes.size() > 256; });
        weighAll(settings);
    }
}

void PortSearch::askAtOtherRates(const std::stop_token& stop) {
    if (!plan_.mayAsk) return;
    const auto instrument =
        std::find_if(plan_.candidates.begin(), plan_.candidates.end(),
                     [](const MeterCandidate& c) { return !c.description.link.identifyCommand.empty(); });
    if (instrument == plan_.candidates.end()) return;
    for (const int rate : kInstrumentRates) {
        if (over(stop)) return;
        LinkSettings settings = bare(instrument->description.link);
        if (settings.baud == rate) continue;
        settings.baud = rate;
        ask(*instrument, settings, stop);
    }
}

} // namespace stillwire
