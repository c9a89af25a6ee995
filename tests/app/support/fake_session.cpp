// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/fake_session.hpp"

#include "app/window/bench_window.hpp"

#include <chrono>
#include <thread>

namespace stillwire::test {

FakeSession* attachTo(BenchWindow& window, std::shared_ptr<SessionSnapshot> snapshot, std::function<void()> strike) {
    const bool guided = snapshot->guided;
    auto made = std::make_unique<FakeSession>(std::move(snapshot));
    FakeSession* session = made.get();
    Opened opened;
    opened.session = std::move(made);
    opened.sheet = leverSheet();
    opened.strike = std::move(strike);
    window.attach(std::move(opened), guided);
    return session;
}

Result<Opened> FakeDoors::open(const Way& way) {
    opened.push_back(way);
    if (way.path.endsWith(QStringLiteral("broken.csv")))
        return Error{Error::Kind::badInput,
                     "broken.csv",
                     12,
                     {"times go back from %1 s to %2 s", {"3.2", "1.1"}},
                     "remove the row or split the file there"};
    Opened made;
    made.session = std::make_unique<FakeSession>(way.kind == Way::Kind::capture ? replayMoment() : wiggleMoment());
    made.sheet = leverSheet();
    made.name = sayName("Depth lever, fretting connector");
    return made;
}

std::vector<PortFinding> FakeDoors::findMeters(const std::function<void(const FindProgress&)>& told,
                                               const std::stop_token& stop) {
    told({.port = "/dev/ttyUSB0", .link = {}, .asking = false, .step = 1, .of = 4, .bytes = 0});
    while (endless && !stop.stop_requested()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return found;
}

PortFinding foundMeter(const char* port, const char* name, bool asDescribed) {
    PortFinding finding;
    finding.port = port;
    MeterMatch match;
    match.name = name;
    match.asDescribed = asDescribed;
    match.fit.sureness = Sureness::sure;
    match.fit.readings = match.fit.volts = 6;
    match.fit.bytes = 84;
    match.link.baud = 2400;
    match.fit.newest = Reading{.time = Time(0), .volts_V = 0.812, .flags = {}};
    finding.matches.push_back(match);
    return finding;
}

} // namespace stillwire::test
