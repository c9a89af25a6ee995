// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/faults.hpp"

#include <algorithm>

namespace stillwire::bench {
namespace {

constexpr std::array<std::string_view, kFaultKinds> kNames = {"worn-track",
                                                              "dirty-spot",
                                                              "connector-fretting",
                                                              "harness-open",
                                                              "harness-short-to-ground",
                                                              "harness-short-to-supply",
                                                              "broken-strand",
                                                              "reference-sag",
                                                              "ground-resistance",
                                                              "mount-rotated",
                                                              "weak-spring",
                                                              "wrong-span"};

Intermittent wiperSpot(double share, double width) {
    Intermittent fault;
    fault.place = Place::wiper;
    fault.share = share;
    fault.width = width;
    fault.shaft_per_s = 0.4;
    fault.motion_per_s = 0.5;
    fault.ohmMin = 1e5;
    fault.ohmMax = 1e7;
    return fault;
}

Intermittent harness(Place place, int section, double ohmMin, double ohmMax) {
    Intermittent fault;
    fault.place = place;
    fault.section = section;
    fault.harness_per_s = 1.0;
    fault.ohmMin = ohmMin;
    fault.ohmMax = ohmMax;
    return fault;
}

} // namespace

std::string_view faultName(FaultKind kind) { return kNames[static_cast<std::size_t>(kind)]; }

std::optional<FaultKind> faultByName(std::string_view name) {
    const auto found = std::find(kNames.begin(), kNames.end(), name);
    if (found == kNames.end()) return std::nullopt;
    return static_cast<FaultKind>(found - kNames.begin());
}

std::size_t restIndex(const Sheet& sheet) {
    for (std::size_t i = 0; i < sheet.positions.size(); ++i) {
        if (sheet.positions[i].rest) return i;
    }
    return 0;
}

Intermittent* addFault(BenchSetup& setup, FaultKind kind, const Sheet& sheet) {
    std::vector<double>& level_V = setup.mechanics.level_V;
    if (level_V.empty()) {
        for (const Position& position : sheet.positions) level_V.push_back(position.aim_V);
    }
    const std::size_t rest = restIndex(sheet);
    const double restShare = (level_V[rest] + setup.mechanics.mount_V) / sheet.nominal_V;
    const auto add = [&](Intermittent fault) {
        fault.cause = std::string(faultName(kind));
        setup.faults.push_back(std::move(fault));
        return &setup.faults.back();
    };

    switch (kind) {
    case FaultKind::wornTrack: {
        setup.track.roughness_ohm = 2000;
        Intermittent fault = wiperSpot(restShare, 0.10);
        fault.ohmMin = 5e4;
        fault.warm = 0.35; // worst cold
        return add(fault);
    }
    case FaultKind::dirtySpot: return add(wiperSpot(restShare, 0.02));
    case FaultKind::connectorFretting: {
        Intermittent fault = harness(Place::signalPin, 1, 1e5, 1e6);
        fault.shaft_per_s = 0.1; // the sensor's body tugs at its own connector
        fault.wipesToClear = 60;
        return add(fault);
    }
    case FaultKind::harnessOpen:
        setup.side = ProbeSide::controllerSide;
        return add(harness(Place::signalWire, 2, 1e6, kOpen_ohm));
    case FaultKind::harnessShortToGround: return add(harness(Place::shortToGround, 2, 0.5, 200));
    case FaultKind::harnessShortToSupply: return add(harness(Place::shortToSupply, 3, 0.5, 200));
    case FaultKind::brokenStrand: return add(harness(Place::referenceWire, 2, 5e3, 1e6));
    case FaultKind::referenceSag:
        setup.reference.path_ohm = 500; // a corroded feed: 5 V into 5 kohm arrives as 4.5 V
        setup.reference.wander_V = 0.04;
        return nullptr;
    case FaultKind::groundResistance: setup.ground.path_ohm = 150; return nullptr;
    case FaultKind::mountRotated: {
        const Window& window = sheet.positions[rest].window;
        // Past the nearer limit: outwards of the travel's middle, where a turn back mends it.
        setup.mechanics.mount_V += window.max_V - level_V[rest] + 0.04;
        return nullptr;
    }
    case FaultKind::weakSpring:
        setup.mechanics.hangChance = 0.5;
        setup.mechanics.hang_V = 0.25;
        return nullptr;
    case FaultKind::wrongSpan: {
        // The travel of the shaft is a fifth short: every level is drawn towards the rest level.
        for (double& level : level_V) level = level_V[rest] + 0.8 * (level - level_V[rest]);
        return nullptr;
    }
    }
    return nullptr;
}

} // namespace stillwire::bench
