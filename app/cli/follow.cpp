// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/follow.hpp"

#include <iomanip>
#include <iostream>
#include <optional>
#include <poll.h>
#include <string_view>
#include <unistd.h>
#include <utility>

namespace stillwire {

namespace {

std::ostream& stamp(Time t) {
    return std::cout << std::setw(9) << std::fixed << std::setprecision(1) << toSeconds(t) << " s  ";
}

bool changed(std::string& last, const std::string& now) { return std::exchange(last, now) != now; }

constexpr std::pair<std::string_view, Command> kWords[] = {
    {"", Command::next},         {"b", Command::back},         {"s", Command::skip},     {"q", Command::stop},
    {"+", Command::turnIn},      {"-", Command::turnOut},      {"y", Command::offerYes}, {"n", Command::offerNo},
    {"on", Command::liftOnStop}, {"off", Command::liftOffStop}};

constexpr std::string_view kSaveTo = "w "; // and a path

std::optional<Command> commandFor(std::string_view typed) {
    for (const auto& [word, command] : kWords)
        if (word == typed) return command;
    return std::nullopt;
}

// Whole lines as they are typed; the end of the input is no command.
class Typed {
public:
    // Waits up to `wait_ms`, then gives one line if there is one.
    std::optional<std::string> line(int wait_ms) {
        pollfd input{STDIN_FILENO, POLLIN, 0};
        if (!open_) {
            ::poll(nullptr, 0, wait_ms);
        } else if (::poll(&input, 1, wait_ms) > 0) {
            char bytes[256];
            const ssize_t got = ::read(STDIN_FILENO, bytes, sizeof bytes);
            if (got <= 0)
                open_ = false;
            else
                text_.append(bytes, static_cast<std::size_t>(got));
        }
        const auto end = text_.find('\n');
        if (end == std::string::npos) return std::nullopt;
        std::string out = text_.substr(0, end);
        text_.erase(0, end + 1);
        return out;
    }

private:
    std::string text_;
    bool open_ = true;
};

} // namespace

std::string keysFor(const Prompt& prompt) {
    std::string keys = "[Enter] go on  [b] back  [s] skip  [q] stop";
    for (const Choice& c : prompt.choices)
        for (const auto& [word, command] : kWords)
            if (command == c.command) keys += "  [" + std::string(word) + "] " + c.says.english();
    if (prompt.aim_V) keys += "  [+] [-] one part-turn made";
    return keys;
}

void Follower::tellPrompt(const Prompt& p, Time now) {
    if (p.stopNow && changed(step_, "stop")) {
        stamp(now) << p.instruction.english() << "\n";
        return;
    }
    if (!p.step) return;
    if (changed(step_, std::string(stepName(*p.step)))) {
        std::cout << "\n";
        stamp(now) << "step " << p.number << " of " << p.of << ": " << p.title.english() << "\n";
        for (const Sentence& c : p.cautions) std::cout << "             ! " << c.english() << "\n";
        std::cout << "             Why: " << p.why.english() << "\n";
        instruction_.clear();
    }
    if (changed(instruction_, p.instruction.english())) {
        stamp(now) << p.instruction.english() << "\n";
        if (!p.detail.empty()) std::cout << "             " << p.detail.english() << "\n";
        std::cout << "             " << keysFor(p) << "\n";
    }
    const std::string pose = p.pose.empty() ? "" : p.pose.english() + ", " + p.wanted.english();
    if (changed(pose_, pose) && !pose.empty()) stamp(now) << pose << "\n";
}

void Follower::tellWire(const Findings& f) {
    for (; dropouts_ < f.excursions.size(); ++dropouts_) {
        const Excursion& e = f.excursions[dropouts_];
        if (e.kind != ExcursionKind::dropout) continue;
        stamp(e.from) << "dropped: from " << volts(e.held_V) << " by at least " << volts(e.depth_V()) << "\n";
    }
    for (; jumps_ < f.jumps.size(); ++jumps_)
        stamp(f.jumps[jumps_].at) << "moved by itself: from " << volts(f.jumps[jumps_].from_V) << " to "
                                  << volts(f.jumps[jumps_].to_V) << "\n";
}

void Follower::tell(const SessionSnapshot& now) {
    tellPrompt(now.prompt, now.now);
    tellWire(*now.findings);
    if (changed(link_, now.linkSays.english()) && !link_.empty()) stamp(now.now) << link_ << "\n";
    if (changed(recorder_, now.recorderSays.english()) && !recorder_.empty()) {
        stamp(now.now) << recorder_ << "\n";
        std::cout << "             [w FILE] saves the whole capture there, and goes on there\n";
    }
    if (changed(path_, now.capturePath) && toldPath_) stamp(now.now) << "the capture goes on in " << path_ << "\n";
    toldPath_ = true;
    std::cout.flush();
}

void followToTheEnd(Session& session, double duration_s, bool (*interrupted)()) {
    constexpr int kLook_ms = 100;
    Follower follower;
    Typed typed;
    while (session.running() && !interrupted()) {
        const auto now = session.snapshot();
        follower.tell(*now);
        if (now->prompt.finished || (duration_s > 0 && toSeconds(now->now) >= duration_s)) break;
        const auto line = typed.line(kLook_ms);
        if (!line) continue;
        if (line->rfind(kSaveTo, 0) == 0) session.saveTo(line->substr(kSaveTo.size()));
        if (const auto command = commandFor(*line)) session.command(*command);
    }
    session.stop();
    follower.tell(*session.snapshot());
}

} // namespace stillwire
