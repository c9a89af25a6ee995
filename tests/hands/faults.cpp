// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/faults.hpp"

namespace stillwire::hands {

const std::vector<FaultRow>& faultTable() {
    using enum Decision;
    static const std::vector<FaultRow> all{
        {Fault::none, "none", "a good sensor, well wired", {keep, cannotTell}},
        {Fault::shaft, "shaft", "drops out under pushes of the shaft, connector held or not", {replace}},
        {Fault::harness, "harness", "drops out in one section of the harness", {checkWiring}},
        {Fault::connector,
         "connector",
         "drops out under pushes of the shaft, not with the connector held",
         {checkWiring}},
        {Fault::referenceLow, "reference-low", "the reference is far below its limit", {checkSupply}},
        {Fault::referenceDrops, "reference-drops", "the reference drops again and again", {checkSupply}},
        {Fault::ground, "ground", "the ground wire drops 0.2 V or more", {checkWiring}},
        {Fault::stuckAtZero, "stuck-zero", "the signal stays at 0 V: the lead is named first", {cannotTell}},
        {Fault::stuckAtReference,
         "stuck-reference",
         "the signal stays at the reference: the lead first",
         {cannotTell}},
        {Fault::leadOnSignal, "lead-on-signal", "the lead never left the signal for the reference", {cannotTell}},
        {Fault::adjust, "adjust", "turned out of its windows; a turn mends it", {adjust}},
        {Fault::span, "span", "the span is wrong; no turn mends it", {checkLinkage}},
        {Fault::hangOnStop,
         "hang-on-stop",
         "two releases hang; the arm is looked at after a good one",
         {checkLinkage}},
        {Fault::hangOffStop, "hang-off-stop", "two releases hang, the arm off its stop", {checkLinkage}},
    };
    return all;
}

const FaultRow& row(Fault fault) { return faultTable()[static_cast<std::size_t>(fault)]; }

} // namespace stillwire::hands
