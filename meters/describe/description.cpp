// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/describe/description.hpp"

#include "meters/decode/line_decoder.hpp"
#include "meters/decode/pattern.hpp"
#include "meters/describe/keys.hpp"

namespace stillwire {

namespace {

// Far beyond any meter; a description from elsewhere shall not make us allocate or wait without end.
constexpr int kMostBaud = 4'000'000;
constexpr double kLongestPoll_s = 3600;

void readLink(SettingReader& keys, const TomlNode& table, LinkSettings& link) {
    keys.integer(table, "baud", 50, kMostBaud, link.baud);
    keys.integer(table, "bits", 7, 8, link.bits);
    keys.choice<Parity>(table, "parity", {{"none", Parity::none}, {"odd", Parity::odd}, {"even", Parity::even}},
                        link.parity);
    keys.integer(table, "stop_bits", 1, 2, link.stopBits);
    keys.choice<FlowControl>(
        table, "flow",
        {{"none", FlowControl::none}, {"hardware", FlowControl::hardware}, {"software", FlowControl::software}},
        link.flow);
    keys.flag(table, "dtr", link.dtr);
    keys.flag(table, "rts", link.rts);
    keys.text(table, "poll_command", link.pollCommand);
    double poll_s = toSeconds(link.pollInterval);
    keys.number(table, "poll_interval_s", 0.001, kLongestPoll_s, poll_s);
    link.pollInterval = fromSeconds(poll_s);
    keys.text(table, "identify_command", link.identifyCommand);
    keys.text(table, "error_command", link.errorCommand);
    keys.texts(table, "start_commands", link.startCommands);
    keys.texts(table, "leave_commands", link.leaveCommands);
}

void readRanges(SettingReader& keys, const TomlNode& layout, AsciiLayout& out) {
    const TomlNode* ranges = keys.table(layout, "range");
    if (ranges == nullptr) return;
    for (const auto& [name, node] : *ranges->table()) {
        if (name.size() != 1)
            return keys.wrong(node.line, "a range is named by more than one character", "write \"0\" = -3");
        int exponent = 0;
        keys.integer(*ranges, name.c_str(), -9, 3, exponent);
        out.rangeExponent10[name.front()] = exponent;
    }
}

void readBits(SettingReader& keys, const TomlNode& layout, AsciiLayout& out) {
    const TomlNode* list = layout.find("bit");
    if (list == nullptr) return;
    if (list->array() == nullptr) return keys.wrong(list->line, "bit is not a list", "write [[frame.layout.bit]]");
    for (const TomlNode& node : *list->array()) {
        if (node.table() == nullptr)
            return keys.wrong(node.line, "bit is not a list of tables", "write [[frame.layout.bit]]");
        AsciiBit bit;
        int mask = 0;
        keys.integer(node, "at", 1, out.length, bit.at);
        keys.integer(node, "mask", 1, 255, mask);
        keys.choice<AsciiMeaning>(node, "means",
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
            keys.wrong(node.line, "a bit lacks at, mask or means", "give all three");
        bit.mask = static_cast<unsigned>(mask);
        out.bits.push_back(bit);
    }
}

void readLayout(SettingReader& keys, const TomlNode& frame, AsciiLayout& out) {
    const TomlNode* layout = keys.table(frame, "layout");
    if (layout == nullptr) {
        keys.wrong(frame.line, "a frame of kind ascii has no layout",
                   "add [frame.layout] with length, digits_at and digits");
        return;
    }
    keys.integer(*layout, "length", 1, static_cast<int>(kLongestLine), out.length);
    keys.integer(*layout, "digits_at", 1, out.length, out.digitsAt);
    keys.integer(*layout, "digits", 1, 15, out.digits);
    keys.integer(*layout, "range_at", 1, out.length, out.rangeAt);
    keys.integer(*layout, "exponent", -9, 3, out.exponent10);
    keys.integer(*layout, "function_at", 1, out.length, out.functionAt);
    keys.text(*layout, "dc_volts", out.dcVolts);
    readRanges(keys, *layout, out);
    readBits(keys, *layout, out);
    if (out.digitsAt == 0 || out.digits == 0 || out.digitsAt + out.digits - 1 > out.length)
        keys.wrong(layout->line, "the digits do not lie within the frame", "check length, digits_at and digits");
    if (out.rangeAt > 0 && out.rangeExponent10.empty())
        keys.wrong(layout->line, "range_at names a character without meanings",
                   "add [frame.layout.range] with \"0\" = -3 and so on");
    if (out.functionAt > 0 && out.dcVolts.empty())
        keys.wrong(layout->line, "function_at names a character without meanings",
                   "add dc_volts with the characters that mean DC volts");
}

void readFrame(SettingReader& keys, const TomlNode& table, FrameSettings& frame) {
    keys.choice<FrameKind>(table, "kind",
                           {{"text", FrameKind::text},
                            {"scpi", FrameKind::scpi},
                            {"segments", FrameKind::segments},
                            {"ascii", FrameKind::ascii},
                            {"polled", FrameKind::polled}},
                           frame.kind);
    keys.text(table, "pattern", frame.pattern);
    keys.flag(table, "decimal_comma", frame.decimalComma);
    if (!frame.pattern.empty()) {
        const auto compiled = LinePattern::compile(frame.pattern);
        if (!compiled) keys.wrong(table.find("pattern")->line, compiled.error().what, compiled.error().mend);
    }
    if (frame.kind == FrameKind::ascii) readLayout(keys, table, frame.ascii);
}

} // namespace

Result<MeterDescription> parseMeterDescription(std::string_view toml, const std::string& where) {
    Result<MeterTraits> traits = parseMeterTraits(toml, where);
    if (!traits) return traits.error();
    const Result<TomlNode> root = parseToml(toml, where);
    if (!root) return root.error();
    MeterDescription out;
    out.traits = std::move(traits.value());
    SettingReader keys(where);
    if (const TomlNode* frame = keys.table(root.value(), "frame")) readFrame(keys, *frame, out.frame);
    if (const TomlNode* link = keys.table(root.value(), "link")) {
        if (out.frame.kind == FrameKind::scpi && link->find("poll_command") != nullptr) {
            out.link.identifyCommand = "*IDN?\n";
            out.link.errorCommand = "SYST:ERR?\n";
        }
        readLink(keys, *link, out.link);
    }
    if (keys.error()) return *keys.error();
    if (out.link.pollInterval == Time(0)) out.link.pollInterval = fromSeconds(out.traits.interval_s);
    return out;
}

} // namespace stillwire
