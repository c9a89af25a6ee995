// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/describe/description.hpp"

#include "core/sheet/from_toml.hpp"
#include "meters/decode/line_decoder.hpp"
#include "meters/decode/pattern.hpp"

namespace stillwire {

namespace {

// Far beyond any meter; a description from elsewhere shall not make us allocate or wait without end.
constexpr int kMostBaud = 4'000'000;
constexpr double kLongestPoll_s = 3600;

void readLink(KeyReader& keys, const TomlNode& table, LinkSettings& link) {
    keys.takeWhole(table, "baud", 50, kMostBaud, link.baud);
    keys.takeWhole(table, "bits", 7, 8, link.bits);
    keys.takeWord<Parity>(table, "parity", {{"none", Parity::none}, {"odd", Parity::odd}, {"even", Parity::even}},
                          link.parity);
    keys.takeWhole(table, "stop_bits", 1, 2, link.stopBits);
    keys.takeWord<FlowControl>(
        table, "flow",
        {{"none", FlowControl::none}, {"hardware", FlowControl::hardware}, {"software", FlowControl::software}},
        link.flow);
    keys.takeFlag(table, "", "dtr", link.dtr);
    keys.takeFlag(table, "", "rts", link.rts);
    keys.takeText(table, "poll_command", link.pollCommand);
    double poll_s = toSeconds(link.pollInterval);
    keys.takeNumber(table, "poll_interval_s", 0.001, kLongestPoll_s, poll_s);
    link.pollInterval = fromSeconds(poll_s);
    keys.takeText(table, "identify_command", link.identifyCommand);
    keys.takeText(table, "error_command", link.errorCommand);
    keys.takeTexts(table, "start_commands", link.startCommands);
    keys.takeTexts(table, "leave_commands", link.leaveCommands);
}

void readRanges(KeyReader& keys, const TomlNode& layout, AsciiLayout& out) {
    const TomlNode* ranges = keys.table(layout, "range");
    if (ranges == nullptr) return;
    for (const auto& [name, node] : *ranges->table()) {
        if (name.size() != 1)
            return keys.complain(&node, "a range is named by more than one character", "write \"0\" = -3");
        int exponent = 0;
        keys.takeWhole(*ranges, name.c_str(), -9, 3, exponent);
        out.rangeExponent10[name.front()] = exponent;
    }
}

void readBits(KeyReader& keys, const TomlNode& layout, AsciiLayout& out) {
    const TomlArray* list = keys.tables(layout, "bit", "frame.layout.bit");
    if (list == nullptr) return;
    for (const TomlNode& node : *list) {
        AsciiBit bit;
        int mask = 0;
        keys.takeWhole(node, "at", 1, out.length, bit.at);
        keys.takeWhole(node, "mask", 1, 255, mask);
        keys.takeWord<AsciiMeaning>(node, "means",
                                    {{"minus", AsciiMeaning::minus},
                                     {"overload", AsciiMeaning::overload},
                                     {"lowbat", AsciiMeaning::lowbat},
                                     {"hold", AsciiMeaning::hold},
                                     {"autorange", AsciiMeaning::autorange},
                                     {"ac", AsciiMeaning::ac},
                                     {"relative", AsciiMeaning::relative},
                                     {"low-impedance", AsciiMeaning::lowImpedance}},
                                    bit.means);
        if (node.find("at") == nullptr || node.find("mask") == nullptr || node.find("means") == nullptr)
            keys.complain(&node, "a bit lacks at, mask or means", "give all three");
        bit.mask = static_cast<unsigned>(mask);
        out.bits.push_back(bit);
    }
}

void readLayout(KeyReader& keys, const TomlNode& frame, AsciiLayout& out) {
    const TomlNode* layout = keys.table(frame, "layout");
    if (layout == nullptr) {
        keys.complain(&frame, "a frame of kind ascii has no layout",
                      "add [frame.layout] with length, digits_at and digits");
        return;
    }
    keys.takeWhole(*layout, "length", 1, static_cast<int>(kLongestLine), out.length);
    keys.takeWhole(*layout, "digits_at", 1, out.length, out.digitsAt);
    keys.takeWhole(*layout, "digits", 1, 15, out.digits);
    keys.takeWhole(*layout, "range_at", 1, out.length, out.rangeAt);
    keys.takeWhole(*layout, "exponent", -9, 3, out.exponent10);
    keys.takeWhole(*layout, "function_at", 1, out.length, out.functionAt);
    keys.takeText(*layout, "dc_volts", out.dcVolts);
    readRanges(keys, *layout, out);
    readBits(keys, *layout, out);
    if (out.digitsAt == 0 || out.digits == 0 || out.digitsAt + out.digits - 1 > out.length)
        keys.complain(layout, "the digits do not lie within the frame", "check length, digits_at and digits");
    if (out.rangeAt > 0 && out.rangeExponent10.empty())
        keys.complain(layout, "range_at names a character without meanings",
                      "add [frame.layout.range] with \"0\" = -3 and so on");
    if (out.functionAt > 0 && out.dcVolts.empty())
        keys.complain(layout, "function_at names a character without meanings",
                      "add dc_volts with the characters that mean DC volts");
}

void readFrame(KeyReader& keys, const TomlNode& table, FrameSettings& frame) {
    keys.takeWord<FrameKind>(table, "kind",
                             {{"text", FrameKind::text},
                              {"scpi", FrameKind::scpi},
                              {"segments", FrameKind::segments},
                              {"ascii", FrameKind::ascii},
                              {"polled", FrameKind::polled}},
                             frame.kind);
    keys.takeText(table, "pattern", frame.pattern);
    keys.takeFlag(table, "", "decimal_comma", frame.decimalComma);
    if (!frame.pattern.empty()) {
        const auto compiled = LinePattern::compile(frame.pattern);
        if (!compiled) keys.complain(table.find("pattern"), compiled.error().what, compiled.error().mend);
    }
    if (frame.kind == FrameKind::ascii) readLayout(keys, table, frame.ascii);
}

} // namespace

Result<MeterDescription> parseMeterDescription(std::string_view toml, const std::string& where) {
    const Result<TomlNode> root = parseToml(toml, where);
    if (!root) return root.error();
    Result<MeterTraits> traits = meterTraitsFromToml(root.value(), {where});
    if (!traits) return traits.error();
    MeterDescription out;
    out.traits = std::move(traits.value());
    out.traits.toml = std::string(toml);
    KeyReader keys({where});
    if (const TomlNode* frame = keys.table(root.value(), "frame")) readFrame(keys, *frame, out.frame);
    if (const TomlNode* link = keys.table(root.value(), "link")) {
        if (out.frame.kind == FrameKind::scpi && link->find("poll_command") != nullptr) {
            out.link.identifyCommand = "*IDN?\n";
            out.link.errorCommand = "SYST:ERR?\n";
        }
        readLink(keys, *link, out.link);
    }
    if (keys.failed()) return keys.error();
    if (out.link.pollInterval == Time(0)) out.link.pollInterval = fromSeconds(out.traits.interval_s);
    return out;
}

} // namespace stillwire
