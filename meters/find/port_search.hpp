// SPDX-License-Identifier: GPL-3.0-or-later
// The search on one port: a list of trials, each with its link settings, until one is sure.
#pragma once

#include "meters/find/find_meter.hpp"

namespace stillwire {

class PortSearch {
public:
    using Told = std::function<void(FindProgress)>;
    PortSearch(const FindPlan& plan, std::string port, const LinkMaker& makeLink, Told told);

    [[nodiscard]] PortFinding run(const std::stop_token& stop);
    [[nodiscard]] int stepsDone() const { return step_; }

private:
    [[nodiscard]] bool over(const std::stop_token& stop) const; // stopped, in trouble, or sure
    bool open(const LinkSettings& settings, bool asking);
    void listenAsDescribed(const std::stop_token& stop);
    void askAsDescribed(const std::stop_token& stop);
    void tryLines(const std::stop_token& stop);
    void tryRates(const std::stop_token& stop);
    void askAtOtherRates(const std::stop_token& stop);
    void ask(const MeterCandidate& candidate, const LinkSettings& settings, const std::stop_token& stop);
    // Reads for up to `seconds_s`, or until what came is `enough`.
    void hear(double seconds_s, const std::stop_token& stop, const std::function<bool()>& enough);
    void weighAll(const LinkSettings& settings);
    void weigh(const MeterCandidate& candidate, const LinkSettings& settings, const Heard& heard,
               const std::string& identity);
    void remember(const LinkSettings& settings);
    bool converse(const std::string& command, double seconds_s, const std::stop_token& stop);
    void send(const std::string& command);

    const FindPlan& plan_;
    const LinkMaker& makeLink_;
    Told told_;
    PortFinding found_;
    std::unique_ptr<Link> link_;
    Heard heard_; // in this trial
    FindProgress progress_;
    LinkSettings lines_; // under which bytes came unasked
    bool anyUnasked_ = false;
    bool opened_ = false; // under one setting at least; an adapter may refuse others
    std::string refusal_; // the first
    int step_ = 0;
};

} // namespace stillwire
