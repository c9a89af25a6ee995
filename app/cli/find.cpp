// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.hpp"
#include "app/cli/stop_key.hpp"
#include "app/shared/resources.hpp"
#include "meters/find/find_meter.hpp"
#include "meters/link/serial_link.hpp"

#include <algorithm>
#include <atomic>
#include <iostream>
#include <mutex>
#include <thread>

namespace stillwire {

namespace {

constexpr int kLook_ms = 100;
constexpr std::size_t kRowsShown = 6;

void tell(const PortFinding& finding) {
    std::cout << "\n" << finding.port << "\n";
    for (const Sentence& sentence : findingSays(finding)) std::cout << "  " << sentence.english() << "\n";
    if (!finding.matches.empty()) {
        std::cout << "  stillwire listen --port " << finding.port << " --meter " << finding.matches.front().name
                  << "\n";
        return;
    }
    const std::span<const std::uint8_t> bytes = finding.heard.bytes;
    for (std::size_t at = 0; at < std::min(bytes.size(), kRowsShown * kBytesInARow); at += kBytesInARow)
        std::cout << "    " << hexRow(bytes.subspan(at, std::min(kBytesInARow, bytes.size() - at))) << "\n";
}

} // namespace

Status runFind(const Options& o) {
    FindPlan plan;
    plan.candidates = loadCandidates();
    plan.mayAsk = !o.onlyListen;
    if (!o.meter.empty()) {
        auto own = loadDescription(o.meter);
        if (!own) return own.error();
        plan.candidates.insert(plan.candidates.begin(), {o.meter, std::move(*own)});
    }
    if (!o.port.empty()) plan.ports = {o.port};
    if (o.port.empty())
        for (const PortInfo& port : listPorts()) plan.ports.push_back(port.name);
    if (plan.ports.empty()) {
        std::cout << "No port was found. Plug the meter's adapter in and look again.\n";
        return Done{};
    }
    std::cout << "Looking on " << plan.ports.size() << (plan.ports.size() == 1 ? " port" : " ports")
              << ". The key q ends it.\n";
    StopKey key;
    std::mutex mutex;
    std::string says; // guarded by mutex
    std::vector<PortFinding> found;
    std::atomic<bool> over{false};
    std::jthread search([&](const std::stop_token& stop) {
        found = findMeters(
            plan, makeSerialLink,
            [&](const FindProgress& progress) {
                const std::lock_guard lock(mutex);
                says = progressSays(progress).english();
            },
            stop);
        over = true;
    });
    for (std::string told; !over;) {
        if (key.pressed(kLook_ms)) search.request_stop();
        const std::lock_guard lock(mutex);
        if (says != told) std::cout << (told = says) << std::endl;
    }
    search.join();
    for (const PortFinding& finding : found) tell(finding);
    return Done{};
}

} // namespace stillwire
