// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/session.hpp"

#include "meters/session/live_session.hpp"

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

Result<std::unique_ptr<MeterLine>> openReference(ReferenceMeter reference, const MeterLine& signal) {
    auto description = parseMeterDescription(reference.meter.toml, reference.meter.name);
    if (!description) return description.error();
    const Error same{.where = signal.link().name(),
                     .what = "both meters are on the same port",
                     .mend = "choose another port for the one on the reference"};
    if (reference.link->name() == same.where) return same;
    if (Status opened = reference.link->open(); !opened) return opened.error();
    if (reference.link->name() == same.where) return same; // one by its name, one by its adapter
    if (!signal.realClock() || reference.link->descriptor() < 0)
        return Error{.where = reference.link->name(),
                     .what = "a second meter goes only beside a meter on a port",
                     .mend = "leave it out here"};
    return std::make_unique<MeterLine>(std::move(reference.link), makeDecoder(*description), *description);
}

} // namespace

Result<std::unique_ptr<Session>> Session::start(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder,
                                                CaptureHeader header, SessionOptions options,
                                                std::optional<ReferenceMeter> reference) {
    ReplayRows* rows = link->rows();
    if (!header.meter && rows == nullptr)
        return Error{
            .where = link->name(), .what = "the session has no meter description", .mend = "choose one with --meter"};
    if (reference) header.referenceMeter = reference->meter;
    std::span<const Reading> first;
    if (rows != nullptr) first = rows->capture().readings;
    auto setup = examinationSetup(header, {}, first, link->name());
    if (!setup) return setup.error();
    if (rows == nullptr && !decoder)
        return Error{
            .kind = Error::Kind::ourFault, .where = link->name(), .what = "the session has no decoder", .mend = {}};

    MeterDescription description;
    description.traits = setup->meter;
    if (rows == nullptr && !setup->meter.toml.empty()) {
        auto parsed = parseMeterDescription(setup->meter.toml, setup->meter.name);
        if (!parsed) return parsed.error();
        description = std::move(parsed.value());
    }
    if (Status opened = link->open(); !opened) return opened.error();
    auto line = std::make_unique<MeterLine>(std::move(link), std::move(decoder), description);
    std::unique_ptr<MeterLine> second;
    if (reference) {
        auto opened = openReference(std::move(*reference), *line);
        if (!opened) return opened.error();
        second = std::move(*opened);
    }
    if (header.started.empty()) header.started = wallClock();
    auto session =
        std::make_unique<LiveSession>(std::move(line), std::move(second), std::move(*setup), std::move(options));
    if (Status begun = session->begin(header); !begun) return begun.error();
    return std::unique_ptr<Session>(std::move(session));
}

} // namespace stillwire
