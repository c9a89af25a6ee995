// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/header.hpp"

#include "core/sheet/from_toml.hpp"

#include <algorithm>

namespace stillwire {

namespace {

Error badHeader(const std::string& where, int line, Sentence what, Sentence mend) {
    return {Error::Kind::badInput, where, line, {"header: %1", {std::move(what)}}, std::move(mend)};
}

// Takes a key out of the table; what is left at the end is unknown and kept.
std::optional<TomlNode> take(TomlTable& table, std::string_view key) {
    const auto found = table.find(key);
    if (found == table.end()) return std::nullopt;
    TomlNode node = std::move(found->second);
    table.erase(found);
    return node;
}

std::string textOf(const TomlNode& node) {
    if (const auto* text = node.string()) return *text;
    if (const auto* date = node.date()) return date->text;
    return {};
}

std::string writeStarted(const std::string& started) {
    const auto parsed = parseToml("started = " + started, "");
    if (parsed) {
        const TomlNode* node = parsed.value().find("started");
        if (node && node->date() && parsed.value().table()->size() == 1) return started;
    }
    return quoteToml(started);
}

// The text of a sheet or a meter, its tables moved one level down. Empty if the text is no TOML.
std::string oneLevelDown(const std::string& toml, const char* key) {
    auto root = parseToml(toml, key);
    return root ? writeToml(*root, key) : std::string();
}

std::string behindHashes(const std::string& toml) {
    std::string out;
    std::size_t start = 0;
    while (start < toml.size()) {
        const std::size_t end = std::min(toml.find('\n', start), toml.size());
        out += end > start ? "# " + toml.substr(start, end - start) + "\n" : "#\n";
        start = end + 1;
    }
    return out;
}

} // namespace

Result<CaptureHeader> parseHeader(std::string_view toml, const std::string& where, int firstLine) {
    const int offset = firstLine - 1;
    auto root = parseToml(toml, where);
    if (!root) {
        Error error = root.error();
        error.line += offset;
        error.what = {"header: %1", {error.what}};
        return error;
    }
    TomlTable table = *root->table();
    CaptureHeader header;
    if (const auto format = take(table, "format")) {
        const auto* value = std::get_if<std::int64_t>(&format->value);
        if (!value || *value < 1 || *value > 1'000'000) {
            return badHeader(where, format->line + offset, "format is not a number from 1 up", "write format = 1");
        }
        header.format = static_cast<int>(*value);
    }
    // A newer format may know more sides than we do; ours may not, since the side decides who is to blame.
    const bool strict = header.format <= kCaptureFormat;
    if (const auto started = take(table, "started")) header.started = textOf(*started);
    if (const auto notes = take(table, "notes")) header.notes = textOf(*notes);
    if (const auto probe = take(table, "probe")) {
        const std::string side = textOf(*probe);
        if (side == "controller-side") {
            header.probe = ProbeSide::controllerSide;
        } else if (side != "sensor-side" && strict) {
            return badHeader(where, probe->line + offset, "probe is neither sensor-side nor controller-side",
                             "write the side of the connector that the probe is on");
        }
    }
    if (const auto black = take(table, "black")) {
        const std::string place = textOf(*black);
        if (place == "sensor-ground") {
            header.black = BlackLead::sensorGround;
        } else if (place != "battery-negative" && strict) {
            return badHeader(where, black->line + offset, "black is neither battery-negative nor sensor-ground",
                             "write where the black lead is");
        }
    }
    if (const auto node = take(table, "sections")) {
        const auto* names = node->array();
        const bool words = names && std::all_of(names->begin(), names->end(), [](const TomlNode& one) {
                               return one.string() && !one.string()->empty();
                           });
        if (!words && strict)
            return badHeader(where, node->line + offset, "sections is not a list of names",
                             "write the names of the harness's sections, from the sensor");
        if (words)
            for (const TomlNode& one : *names) header.sections.push_back(*one.string());
    }
    if (const auto node = take(table, "sheet")) {
        if (!node->table()) {
            return badHeader(where, node->line + offset, "sheet is not a table", "write it as [sheet]");
        }
        auto sheet = sheetFromToml(*node, {where, offset, "sheet"});
        if (!sheet) return sheet.error();
        sheet->toml = writeToml(*node, "");
        header.sheet = std::move(*sheet);
    }
    struct MeterTable {
        const char* key;
        std::optional<MeterTraits>* out;
    };
    for (const MeterTable& one :
         {MeterTable{"meter", &header.meter}, MeterTable{"reference_meter", &header.referenceMeter}}) {
        const auto node = take(table, one.key);
        if (!node) continue;
        if (!node->table()) {
            return badHeader(where, node->line + offset, {"%1 is not a table", {one.key}},
                             {"write it as [%1]", {one.key}});
        }
        auto meter = meterTraitsFromToml(*node, {where, offset, one.key});
        if (!meter) return meter.error();
        meter->toml = writeToml(*node, "");
        *one.out = std::move(*meter);
    }
    header.other = writeToml(TomlNode{std::move(table), 0}, "");
    return header;
}

std::string formatHeader(const CaptureHeader& header) {
    std::string toml = "format = " + std::to_string(header.format) + "\n";
    toml += "started = " + writeStarted(header.started) + "\n";
    toml += "notes = " + quoteToml(header.notes) + "\n";
    toml += header.probe == ProbeSide::controllerSide ? "probe = \"controller-side\"\n" : "probe = \"sensor-side\"\n";
    toml +=
        header.black == BlackLead::sensorGround ? "black = \"sensor-ground\"\n" : "black = \"battery-negative\"\n";
    TomlArray sections;
    for (const std::string& name : header.sections) sections.push_back({name, 0});
    toml += writeToml(TomlNode{TomlTable{{"sections", {std::move(sections), 0}}}, 0}, "");
    if (auto other = parseToml(header.other, "")) toml += writeToml(*other, "");
    if (header.sheet)
        toml += oneLevelDown(header.sheet->toml.empty() ? describe(*header.sheet) : header.sheet->toml, "sheet");
    const auto addMeter = [&toml](const std::optional<MeterTraits>& meter, const char* key) {
        if (meter) toml += oneLevelDown(meter->toml.empty() ? describe(*meter) : meter->toml, key);
    };
    addMeter(header.meter, "meter");
    addMeter(header.referenceMeter, "reference_meter");
    return behindHashes(toml);
}

} // namespace stillwire
