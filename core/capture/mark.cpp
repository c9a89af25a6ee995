// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/mark.hpp"

#include <array>

namespace stillwire {

namespace {

constexpr std::array<std::string_view, kStepCount> kStepNames = {
    "hook-up",    "reference", "ground",           "cold-start",   "wiggle-shaft", "wiggle-harness",
    "full-press", "sweep",     "release",          "lift",         "warm-repeat",  "adjust",
    "confirm",    "put-back",  "wiggle-reference", "wiggle-ground"};

} // namespace

MarkKind Mark::kind() const {
    const std::string_view whole = text;
    if (whole == "step:end") return MarkKind::stepEnd;
    if (whole == "key:on") return MarkKind::keyOn;
    if (whole == "key:off") return MarkKind::keyOff;
    if (whole == "gap") return MarkKind::gap;
    const std::size_t colon = whole.find(':');
    if (colon == std::string_view::npos) return MarkKind::unknown;
    const std::string_view word = whole.substr(0, colon);
    if (word == "step") return MarkKind::step;
    if (word == "pose") return MarkKind::pose;
    if (word == "position") return MarkKind::position;
    if (word == "skip") return MarkKind::skip;
    if (word == "undo") return MarkKind::undo;
    if (word == "turn") return MarkKind::turn;
    if (word == "probe") return MarkKind::probe;
    if (word == "arm") return MarkKind::arm;
    if (word == "note") return MarkKind::note;
    return MarkKind::unknown;
}

std::string_view Mark::argument() const {
    const std::string_view whole = text;
    const std::size_t colon = whole.find(':');
    return colon == std::string_view::npos ? std::string_view() : whole.substr(colon + 1);
}

std::string_view stepName(Step step) { return kStepNames[static_cast<std::size_t>(step)]; }

std::optional<Step> stepByName(std::string_view name) {
    for (std::size_t i = 0; i < kStepNames.size(); ++i) {
        if (kStepNames[i] == name) return static_cast<Step>(i);
    }
    return std::nullopt;
}

} // namespace stillwire
