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

} // namespace

Result<std::unique_ptr<Session>> Session::start(std::unique_ptr<Link> link, std::unique_ptr<Decoder> decoder,
                                                CaptureHeader header, SessionOptions options) {
    if (!header.sheet)
        return Error{
            .where = link->name(), .what = "the session has no sensor sheet", .mend = "choose one with --sheet"};
    ReplayRows* rows = link->rows();
    ExaminationSetup setup{.sheet = *header.sheet, .meter = {}, .probe = header.probe, .black = header.black};
    setup.meterKnown = header.meter.has_value();
    if (header.meter)
        setup.meter = *header.meter;
    else if (rows != nullptr)
        setup.meter = learnMeter(rows->capture().readings);
    else
        return Error{
            .where = link->name(), .what = "the session has no meter description", .mend = "choose one with --meter"};
    if (rows == nullptr && !decoder)
        return Error{
            .kind = Error::Kind::ourFault, .where = link->name(), .what = "the session has no decoder", .mend = {}};

    MeterDescription description;
    description.traits = setup.meter;
    if (rows == nullptr && !setup.meter.toml.empty()) {
        auto parsed = parseMeterDescription(setup.meter.toml, setup.meter.name);
        if (!parsed) return parsed.error();
        description = std::move(parsed.value());
    }
    if (Status opened = link->open(); !opened) return opened.error();
    if (header.started.empty()) header.started = wallClock();
    auto session = std::make_unique<LiveSession>(std::move(link), std::move(decoder), std::move(setup),
                                                 std::move(description), std::move(options));
    if (Status begun = session->begin(header); !begun) return begun.error();
    return std::unique_ptr<Session>(std::move(session));
}

} // namespace stillwire
