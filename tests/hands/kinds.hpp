// SPDX-License-Identifier: GPL-3.0-or-later
// What people do without being asked, on a sensor that is good: each with what the contract may call it.
// That they do it is common practice, no source; how far and how long is invented.
#pragma once

#include <array>
#include <string_view>

namespace stillwire::hands {

enum class Kind {
    slip,
    tap,
    secondPress,
    lean,
    resting,
    unfinished,
    leadLost,
    blackOff,
    crank,
    sag,
    early,
    late,
    creep,
    skipPose,
    pause,
    wiggleTwice,
    slowPress,
    markTwice,
    undone,
    neighbour,
    phone,
    lights,
    clipBeforeMark,
    clipAfterMark,
    keyCycle,
    silence,
    dropIn,
    bounce
};

struct KindRow {
    Kind kind;
    std::string_view name;
    std::string_view likely; // of the contract's words, those that are true, with | between; empty: nothing to tell
    std::string_view says;
};

inline constexpr std::array<KindRow, static_cast<std::size_t>(Kind::bounce) + 1> kKinds{{
    {Kind::slip, "slip", "slip", "the foot comes off for a moment while it should hold"},
    {Kind::tap, "tap", "tap", "the foot touches it while it should rest"},
    {Kind::secondPress, "second-press", "tap|early|unknown", "a whole press that nobody asked for"},
    {Kind::lean, "lean", "lean", "the arm turns with each push to one side, and back"},
    {Kind::resting, "resting", "resting|unfinished|late", "the foot stays a little on it after one release"},
    {Kind::unfinished, "unfinished", "unfinished", "one press stops short"},
    {Kind::leadLost, "lead-lost", "lead", "the red tip loses contact once"},
    {Kind::blackOff, "black-off", "lead", "the black clip slips off once"},
    {Kind::crank, "crank", "crank|sag", "somebody cranks for about a second"},
    {Kind::sag, "sag", "", "the battery sags over minutes"},
    {Kind::early, "early", "early", "a movement begins before its mark"},
    {Kind::late, "late", "late", "a movement begins long after its mark"},
    {Kind::creep, "creep", "creep", "the foot creeps through a step"},
    {Kind::skipPose, "skip-pose", "", "one pose is left out"},
    {Kind::pause, "pause", "", "a minute of nothing"},
    {Kind::wiggleTwice, "wiggle-twice", "", "two pushes in one pose"},
    {Kind::slowPress, "slow-press", "", "one movement takes seconds"},
    {Kind::markTwice, "mark-twice", "", "a mark is set twice"},
    {Kind::undone, "undone", "", "a step is begun, undone and begun again"},
    {Kind::neighbour, "neighbour", "creep|unknown|lean|tap", "somebody leans on the machine for some seconds"},
    {Kind::phone, "phone", "tap|slip|creep|unknown", "a phone call, the foot wanders"},
    {Kind::lights, "lights", "unknown", "lights go on, the ground shifts by 20 mV"},
    {Kind::clipBeforeMark, "clip-before-mark", "lead|early|unknown", "the lead is moved and the mark comes late"},
    {Kind::clipAfterMark, "clip-after-mark", "lead|late|unknown", "the mark is set and the lead comes late"},
    {Kind::keyCycle, "key-cycle", "crank|lead|sag|unknown", "the key is turned off and on"},
    {Kind::silence, "silence", "", "the log stops for some seconds"},
    {Kind::dropIn, "drop-in", "tap|unknown", "something is dropped on it: three quick bumps"},
    {Kind::bounce, "bounce", "tap|slip|unknown", "let go too fast, it comes back once more"},
}};

constexpr bool kindsInOrder() {
    for (std::size_t i = 0; i < kKinds.size(); ++i)
        if (kKinds[i].kind != static_cast<Kind>(i)) return false;
    return true;
}
static_assert(kindsInOrder());

[[nodiscard]] constexpr const KindRow& row(Kind kind) { return kKinds[static_cast<std::size_t>(kind)]; }

} // namespace stillwire::hands
