// SPDX-License-Identifier: GPL-3.0-or-later
// What the wire does is told by shape alone: everything here is looked at in pure black and white.
#include "app/window/wire/readout_view.hpp"
#include "app/window/wire/trace_view.hpp"
#include "tests/app/support/fake_session.hpp"

#include <functional>

#include <gtest/gtest.h>

namespace stillwire {
namespace {

// As a printer or a bad screen would: lighter than the middle is white, no dither.
QImage blackAndWhite(QWidget& widget, bool night) {
    QImage grey = widget.grab().toImage().convertToFormat(QImage::Format_Grayscale8);
    for (int y = 0; y < grey.height(); ++y)
        for (int x = 0; x < grey.width(); ++x) {
            const bool light = qGray(grey.pixel(x, y)) >= 128;
            grey.setPixelColor(x, y, light != night ? Qt::white : Qt::black);
        }
    return grey;
}

int differing(const QImage& a, const QImage& b, const QRect& where) {
    int count = 0;
    for (int y = where.top(); y <= where.bottom(); ++y)
        for (int x = where.left(); x <= where.right(); ++x) count += a.pixel(x, y) != b.pixel(x, y) ? 1 : 0;
    return count;
}

std::shared_ptr<SessionSnapshot> with(const std::function<void(Findings&)>& change) {
    auto snapshot = test::moment(WireState::steady);
    auto findings = std::make_shared<Findings>(*snapshot->findings);
    findings->excursions.clear();
    findings->jumps.clear();
    findings->blind.clear();
    findings->phases = {{PhaseKind::quiet, Time{0}, fromSeconds(75), 4.236, 0.002}};
    change(*findings);
    snapshot->findings = findings;
    return snapshot;
}

Scene sceneOf(std::shared_ptr<SessionSnapshot> snapshot) {
    Scene scene;
    scene.snapshot = std::move(snapshot);
    scene.sheet = test::leverSheet();
    return scene;
}

class Shapes : public ::testing::TestWithParam<bool> {
protected:
    Shapes() { look.setNight(GetParam()); }
    Look look;
};

// The sign before the word and the frame's upper edge, without the words.
TEST_P(Shapes, EveryStateOfTheWireHasItsOwnSignAndFrame) {
    std::vector<std::pair<std::string, QImage>> seen;
    const QSize size(828, 145);
    auto add = [&](const std::string& name, std::shared_ptr<SessionSnapshot> snapshot) {
        QWidget holder;
        holder.setPalette(look.widgetPalette());
        holder.resize(size);
        ReadoutView readout(look, &holder);
        readout.resize(size);
        readout.show(sceneOf(std::move(snapshot)));
        seen.emplace_back(name, blackAndWhite(holder, GetParam()));
    };
    add("dropped", test::wiggleMoment());
    for (const auto& [name, state] : {std::pair{"steady", WireState::steady}, std::pair{"moving", WireState::moving},
                                      std::pair{"jumped", WireState::jumped}, std::pair{"blind", WireState::blind},
                                      std::pair{"silent", WireState::silent}})
        add(name, test::moment(state));
    const int boxAt = size.width() - look.ipx(288);
    const QRect sign(boxAt, look.ipx(22), look.ipx(60), look.ipx(44));
    const QRect frame(boxAt, 0, look.ipx(288) - 1, look.ipx(14));
    for (std::size_t i = 0; i < seen.size(); ++i)
        for (std::size_t j = i + 1; j < seen.size(); ++j) {
            const auto& [a, first] = seen[i];
            const auto& [b, second] = seen[j];
            EXPECT_GE(differing(first, second, sign), 60) << "signs: " << a << " and " << b;
            const bool calm = (a == "steady" || b == "steady") && a != "dropped" && a != "jumped" && b != "jumped";
            EXPECT_GE(differing(first, second, frame), calm ? 30 : 40) << "frames: " << a << " and " << b;
        }
}

TEST_P(Shapes, OnTheTraceADropoutBlindTimeTravelAndAJumpAreToldApart) {
    std::vector<std::pair<std::string, QImage>> seen;
    auto add = [&](const std::string& name, const std::function<void(Findings&)>& change) {
        TraceView trace(look);
        trace.resize(828, 420);
        trace.show(sceneOf(with(change)));
        seen.emplace_back(name, blackAndWhite(trace, GetParam()));
    };
    const Time from = fromSeconds(45), to = fromSeconds(47);
    add("nothing", [](Findings&) {});
    add("dropout", [&](Findings& f) {
        Excursion e;
        e.from = from;
        e.to = to;
        e.held_V = 4.236;
        e.extreme_V = 3;
        f.excursions.push_back(e);
    });
    add("leap", [&](Findings& f) {
        Excursion e;
        e.from = from;
        e.to = to;
        e.held_V = 2;
        e.extreme_V = 3;
        e.direction = Direction::up;
        f.excursions.push_back(e);
    });
    add("blind", [&](Findings& f) { f.blind.push_back({from, to, BlindCause::gap}); });
    add("jump", [&](Findings& f) {
        LevelJump jump;
        jump.at = from;
        jump.from_V = 4.1;
        jump.to_V = 3.6;
        f.jumps.push_back(jump);
    });
    add("travel", [&](Findings& f) {
        f.phases = {{PhaseKind::quiet, Time{0}, fromSeconds(30), 4.236, 0.002},
                    {PhaseKind::travel, fromSeconds(30), fromSeconds(60), {}, {}},
                    {PhaseKind::quiet, fromSeconds(60), fromSeconds(75), 4.236, 0.002}};
    });
    add("wiggle", [&](Findings& f) {
        f.phases = {{PhaseKind::quiet, Time{0}, fromSeconds(30), 4.236, 0.002},
                    {PhaseKind::wiggle, fromSeconds(30), fromSeconds(60), 4.236, 0.002},
                    {PhaseKind::quiet, fromSeconds(60), fromSeconds(75), 4.236, 0.002}};
    });
    for (std::size_t i = 0; i < seen.size(); ++i)
        for (std::size_t j = i + 1; j < seen.size(); ++j)
            EXPECT_GE(differing(seen[i].second, seen[j].second, seen[i].second.rect()), 60)
                << seen[i].first << " and " << seen[j].first;
}

INSTANTIATE_TEST_SUITE_P(Themes, Shapes, ::testing::Values(false, true),
                         [](const auto& theme) { return theme.param ? "Night" : "Day"; });

} // namespace
} // namespace stillwire
