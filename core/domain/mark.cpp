// SPDX-License-Identifier: GPL-3.0-or-later
// The grammar of marks and of the places of poses, read and written.
#include "core/domain/mark.hpp"

#include <charconv>
#include <cmath>
#include <utility>

namespace stillwire {

namespace {

constexpr std::string_view kSection = "section-";
constexpr double kMostTurns = 1000;
constexpr std::array<std::pair<Arm, std::string_view>, 4> kArms{
    {{Arm::onStop, "on-stop"}, {Arm::offStop, "off-stop"}, {Arm::held, "held"}, {Arm::free, "free"}}};
constexpr std::array<std::pair<Side, std::string_view>, 5> kPushes{
    {{Side::left, "left"}, {Side::right, "right"}, {Side::in, "in"}, {Side::out, "out"}, {Side::tap, "tap"}}};
constexpr std::array<std::pair<ProbeSide, std::string_view>, 2> kSides{
    {{ProbeSide::sensorSide, "sensor-side"}, {ProbeSide::controllerSide, "controller-side"}}};

double turnsIn(std::string_view number) {
    double turns = 0;
    if (number.starts_with('+')) number.remove_prefix(1);
    std::from_chars(number.data(), number.data() + number.size(), turns);
    return std::abs(turns) <= kMostTurns ? turns : 0;
}

std::string writeTurns(double turns) {
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof digits, turns).ptr;
    return (turns < 0 ? "" : "+") + std::string(digits, end);
}

template <class Words, class Value> std::string wordOf(const Words& words, Value value) {
    return std::string(
        std::find_if(words.begin(), words.end(), [&](const auto& w) { return w.first == value; })->second);
}

struct Writer {
    std::string operator()(const UnknownMark& m) const { return m.text; }
    std::string operator()(const StepMark& m) const { return "step:" + std::string(stepName(m.step)); }
    std::string operator()(const StepEndMark&) const { return "step:end"; }
    std::string operator()(const PoseMark& m) const { return "pose:" + m.place.text(); }
    std::string operator()(const PositionMark& m) const { return "position:" + m.name; }
    std::string operator()(const KeyMark& m) const { return m.on ? "key:on" : "key:off"; }
    std::string operator()(const SkipMark& m) const { return "skip:" + std::string(stepName(m.step)); }
    std::string operator()(const UndoMark& m) const { return "undo:" + std::string(stepName(m.step)); }
    std::string operator()(const TurnMark& m) const { return "turn:" + writeTurns(m.turns); }
    std::string operator()(const ProbeMark& m) const { return "probe:" + wordOf(kSides, m.side); }
    std::string operator()(const ArmMark& m) const { return "arm:" + wordOf(kArms, m.arm); }
    std::string operator()(const GapMark&) const { return "gap"; }
    std::string operator()(const NoteMark& m) const { return "note:" + m.text; }
};

} // namespace

MarkContent parseMark(std::string_view text) {
    if (text == "step:end") return StepEndMark{};
    if (text == "key:on" || text == "key:off") return KeyMark{text == "key:on"};
    if (text == "gap") return GapMark{};
    const std::size_t colon = text.find(':');
    if (colon == text.npos) return UnknownMark{std::string(text)};
    const std::string_view word = text.substr(0, colon), rest = text.substr(colon + 1);
    if (word == "pose") return PoseMark{PosePlace::parse(rest)};
    if (word == "position") return PositionMark{std::string(rest)};
    if (word == "turn") return TurnMark{turnsIn(rest)};
    if (word == "note") return NoteMark{std::string(rest)};
    if (const std::optional<Step> step = stepByName(rest)) {
        if (word == "step") return StepMark{*step};
        if (word == "skip") return SkipMark{*step};
        if (word == "undo") return UndoMark{*step};
    }
    for (const auto& [arm, name] : kArms)
        if (word == "arm" && rest == name) return ArmMark{arm};
    for (const auto& [side, name] : kSides)
        if (word == "probe" && rest == name) return ProbeMark{side};
    return UnknownMark{std::string(text)};
}

std::string writeMark(const MarkContent& content) { return std::visit(Writer{}, content); }

PosePlace PosePlace::parse(std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash == text.npos && text.starts_with(kSection)) return {std::string(text), {}};
    // Split only what text() puts together again.
    if (slash == text.npos || slash == 0 || slash + 1 == text.size()) return {{}, std::string(text)};
    return {std::string(text.substr(0, slash)), std::string(text.substr(slash + 1))};
}

std::string_view sideName(Side side) {
    return std::find_if(kPushes.begin(), kPushes.end(), [&](const auto& row) { return row.first == side; })->second;
}

PosePlace PosePlace::at(Side side, int section) {
    return {section > 0 ? std::string(kSection) + std::to_string(section) : "", std::string(sideName(side))};
}

std::string PosePlace::text() const { return area.empty() || way.empty() ? area + way : area + "/" + way; }

std::optional<Side> PosePlace::side() const {
    for (const auto& [side, name] : kPushes)
        if (way == name) return side;
    return std::nullopt;
}

std::vector<std::string> usualSections() { return {"connector", "wire-1", "wire-2", "controller"}; }

bool PosePlace::isSection(std::string_view name, std::size_t number) const {
    return area == name || (area.empty() && way == name) || section() == std::to_string(number);
}

std::string_view PosePlace::section() const {
    return area.starts_with(kSection) ? std::string_view(area).substr(kSection.size()) : std::string_view();
}

} // namespace stillwire
