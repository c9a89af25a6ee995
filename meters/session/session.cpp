// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/session.hpp"

#include "meters/session/live_session.hpp"
#include "meters/session/meter_line.hpp"
#include "meters/session/replay_input.hpp"

#include <array>
#include <ctime>

namespace stillwire {

namespace {

// RFC 3339 with the local offset.
std::string wallClock() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    std::array<char, 40> text{};
    std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%S%z", &local);
    std::string out = text.data();
    out.insert(out.size() - 2, ":"); // +0200 as +02:00
    return out;
}

Result<std::unique_ptr<Input>> openSignal(MeterPort signal) {
    if (Status opened = signal.link->open(); !opened) return opened.error();
    return std::unique_ptr<Input>(std::make_unique<MeterLine>(std::move(signal)));
}

Result<std::unique_ptr<Input>> openReference(MeterPort reference, const Input& signal) {
    const Error same{.where = signal.name(),
                     .what = "both meters are on the same port",
                     .mend = "choose another port for the one on the reference"};
    if (reference.link->name() == same.where) return same;
    if (Status opened = reference.link->open(); !opened) return opened.error();
    if (reference.link->name() == same.where) return same; // one by its name, one by its adapter
    if (!signal.realClock() || reference.link->descriptor() < 0)
        return Error{.where = reference.link->name(),
                     .what = "a second meter goes only beside a meter on a port",
                     .mend = "leave it out here"};
    return std::unique_ptr<Input>(std::make_unique<MeterLine>(std::move(reference)));
}

Result<std::unique_ptr<Session>> begun(std::unique_ptr<Input> signal, std::unique_ptr<Input> reference,
                                       ExaminationSetup setup, CaptureHeader header, SessionOptions options) {
    if (header.started.empty()) header.started = wallClock();
    auto session =
        std::make_unique<LiveSession>(std::move(signal), std::move(reference), std::move(setup), std::move(options));
    if (Status begun = session->begin(header); !begun) return begun.error();
    return std::unique_ptr<Session>(std::move(session));
}

} // namespace

Result<std::unique_ptr<Session>> Session::start(MeterPort signal, CaptureHeader header, SessionOptions options,
                                                std::optional<MeterPort> reference) {
    const std::string name = signal.link->name();
    if (!header.meter)
        return Error{
            .where = name, .what = "the session has no meter description", .mend = "choose one with --meter"};
    if (reference) header.referenceMeter = reference->meter.traits;
    if (options.guided && header.sections.empty()) header.sections = usualSections();
    auto setup = examinationSetup(header, {}, {}, name);
    if (!setup) return setup.error();
    auto first = openSignal(std::move(signal));
    if (!first) return first.error();
    std::unique_ptr<Input> second;
    if (reference) {
        auto opened = openReference(std::move(*reference), **first);
        if (!opened) return opened.error();
        second = std::move(*opened);
    }
    return begun(std::move(*first), std::move(second), std::move(*setup), std::move(header), std::move(options));
}

Result<std::unique_ptr<Session>> Session::replay(Capture capture, std::string name, SessionOptions options) {
    CaptureHeader header = capture.header;
    auto setup = examinationSetup(header, {}, capture.readings, name);
    if (!setup) return setup.error();
    auto input = std::make_unique<ReplayInput>(std::move(capture), std::move(name), options.replaySpeed);
    return begun(std::move(input), nullptr, std::move(*setup), std::move(header), std::move(options));
}

} // namespace stillwire
