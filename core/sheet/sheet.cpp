// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet.hpp"

#include "core/base/sentence.hpp"
#include "core/sheet/from_toml.hpp"

#include <algorithm>

namespace stillwire {

namespace {

constexpr int kSheetFormat = 1;
constexpr double kMostVolts = 1000; // far beyond any three-wire sensor; keeps every later sum tame

// min_V and max_V of a table, neither crossed nor without width.
Window readWindow(KeyReader& keys, const TomlNode& table, const std::string& path, double high_V) {
    Window window;
    window.min_V = keys.number(table, path, "min_V", 0, high_V);
    window.max_V = keys.number(table, path, "max_V", 0, high_V);
    if (!keys.failed() && window.min_V >= window.max_V) {
        keys.complain(table.find("min_V"),
                      {"%1: the window is crossed, min_V %2 is not below max_V %3",
                       {path, plain(window.min_V, 3), plain(window.max_V, 3)}},
                      "put the lower limit in min_V and the higher in max_V");
    }
    return window;
}

void readReference(KeyReader& keys, const TomlNode& root, Sheet& sheet) {
    const TomlNode* table = keys.table(root, "reference", true);
    if (!table) return;
    sheet.nominal_V = keys.number(*table, "reference", "nominal_V", 0.1, kMostVolts);
    sheet.reference = readWindow(keys, *table, "reference", kMostVolts);
    if (!keys.failed() && !sheet.reference.contains(sheet.nominal_V)) {
        keys.complain(table->find("nominal_V"), "reference: nominal_V lies outside min_V to max_V",
                      "correct nominal_V or the limits");
    }
}

void readPosition(KeyReader& keys, const TomlNode& node, std::size_t number, Sheet& sheet) {
    const std::string path = "position " + std::to_string(number);
    Position position;
    if (const auto* name = keys.text(node, path, "name", true)) {
        position.name = *name;
        if (sheet.find(position.name)) {
            keys.complain(&node, {"two positions are named \"%1\"", {position.name}}, "give each its own name");
        }
    }
    position.window = readWindow(keys, node, path, sheet.nominal_V);
    position.aim_V = position.window.middle_V();
    if (const auto aim_V = keys.optionalNumber(node, path, "aim_V", 0, sheet.nominal_V)) {
        position.aim_V = *aim_V;
        if (!keys.failed() && !position.window.contains(*aim_V)) {
            keys.complain(node.find("aim_V"), {"%1: aim_V lies outside the window", {path}},
                          "aim between min_V and max_V");
        }
    }
    keys.takeFlag(node, path, "rest", position.rest);
    const bool another =
        std::any_of(sheet.positions.begin(), sheet.positions.end(), [](const Position& p) { return p.rest; });
    if (position.rest && another)
        keys.complain(node.find("rest"), "two positions have rest = true",
                      "leave it at the one where the sensor rests");
    sheet.positions.push_back(std::move(position));
}

void readPositions(KeyReader& keys, const TomlNode& root, Sheet& sheet) {
    const TomlArray* positions = keys.tables(root, "position");
    if (keys.failed()) return;
    if (!positions || positions->size() < 2) {
        keys.complain(positions && !positions->empty() ? &positions->front() : nullptr,
                      "fewer than two [[position]] tables", "add one for each end of the travel");
        return;
    }
    for (std::size_t i = 0; i < positions->size() && !keys.failed(); ++i) {
        readPosition(keys, (*positions)[i], i + 1, sheet);
    }
    const bool rests =
        std::any_of(sheet.positions.begin(), sheet.positions.end(), [](const Position& p) { return p.rest; });
    if (!rests) sheet.positions.front().rest = true;
}

void readWiggle(KeyReader& keys, const TomlNode& root, Sheet& sheet) {
    sheet.play_V = 0.01 * sheet.nominal_V;
    sheet.leanMax_V = 0.05 * sheet.nominal_V;
    const TomlNode* table = keys.table(root, "wiggle");
    if (!table) return;
    keys.takeNumber(*table, "play_V", 0, sheet.nominal_V, sheet.play_V);
    keys.takeNumber(*table, "lean_max_V", 0, sheet.nominal_V, sheet.leanMax_V);
    keys.takeNumber(*table, "fault_share", 0.001, 1, sheet.referenceFault.share);
    keys.takeNumber(*table, "fault_section_share", 0.001, 1, sheet.referenceFault.sectionShare);
    keys.takeNumber(*table, "fault_depth_V", 0.001, sheet.nominal_V, sheet.referenceFault.depth_V);
    keys.takeNumber(*table, "fault_level_share", 0.001, 1, sheet.referenceFault.levelShare);
}

void readDrive(KeyReader& keys, const TomlNode& root, Sheet& sheet) {
    const TomlNode* table = keys.table(root, "drive");
    if (!table) return;
    Drive drive;
    drive.noneAt_V = keys.number(*table, "drive", "none_at_V", 0, sheet.nominal_V);
    drive.fullAt_V = keys.number(*table, "drive", "full_at_V", 0, sheet.nominal_V);
    drive.debounce_s = keys.number(*table, "drive", "debounce_s", 0, 60);
    // Either may be the higher: the signal of some pedals falls as they are pressed.
    if (!keys.failed() && drive.noneAt_V == drive.fullAt_V) {
        keys.complain(table, "drive: none_at_V and full_at_V are the same", "give the two ends of the drive");
    }
    sheet.drive = drive;
}

void readCautions(KeyReader& keys, const TomlNode& root, Sheet& sheet) {
    const TomlNode* table = keys.table(root, "cautions");
    const TomlNode* text = table ? table->find("text") : nullptr;
    if (!text) return;
    if (const std::string* one = text->string()) {
        sheet.cautions.push_back(*one);
    } else if (!text->array()) {
        keys.complain(text, "cautions: text is not a list of texts", "write text = [\"…\"]");
    } else {
        for (const TomlNode& node : *text->array()) {
            if (const std::string* caution = node.string())
                sheet.cautions.push_back(*caution);
            else
                keys.complain(node.line > 0 ? &node : text, "cautions: text holds something that is no text",
                              "write each caution in quotes");
        }
    }
}

// Own rule, no source: more than twice a drop of 0.2 V at 5 V, which the trade calls bad.
constexpr double kMostDrop = 0.1; // of the nominal

void doubt(Sheet& sheet) {
    for (std::size_t i = 0; i < sheet.positions.size(); ++i)
        for (std::size_t k = i + 1; k < sheet.positions.size(); ++k) {
            const Position &a = sheet.positions[i], &b = sheet.positions[k];
            if (a.window.min_V < b.window.max_V && b.window.min_V < a.window.max_V)
                sheet.doubts.push_back({"the windows of %1 and %2 overlap in the sheet: a level may lie in both",
                                        {byName(a.name), byName(b.name)}});
        }
    if (sheet.maxDrop_V > kMostDrop * sheet.nominal_V)
        sheet.doubts.push_back({"the sheet allows the ground to drop by %1: hardly any ground would be found bad",
                                {volts(sheet.maxDrop_V)}});
}

} // namespace

const Position& Sheet::rest() const {
    const auto found = std::find_if(positions.begin(), positions.end(), [](const Position& p) { return p.rest; });
    return found == positions.end() ? positions.front() : *found;
}

double Sheet::span_V() const {
    const auto [least, most] =
        std::minmax_element(positions.begin(), positions.end(), [](const Position& a, const Position& b) {
            return a.window.middle_V() < b.window.middle_V();
        });
    return most->window.middle_V() - least->window.middle_V();
}

const Position* Sheet::find(std::string_view wanted) const {
    const auto found =
        std::find_if(positions.begin(), positions.end(), [&](const Position& p) { return p.name == wanted; });
    return found == positions.end() ? nullptr : &*found;
}

Result<Sheet> sheetFromToml(const TomlNode& root, const TomlOrigin& origin) {
    KeyReader keys(origin);
    Sheet sheet;
    // First of all: in a newer format any other complaint would mislead.
    keys.format(root, kSheetFormat);
    if (const auto* name = keys.text(root, "", "name", true)) sheet.name = *name;
    if (const auto* source = keys.text(root, "", "source", false)) sheet.source = *source;
    readReference(keys, root, sheet);
    if (const TomlNode* ground = keys.table(root, "ground", true)) {
        sheet.maxDrop_V = keys.number(*ground, "ground", "max_drop_V", 0, kMostVolts);
    }
    readPositions(keys, root, sheet);
    if (const TomlNode* adjustment = keys.table(root, "adjustment")) {
        sheet.driftAllowance_V = keys.number(*adjustment, "adjustment", "drift_allowance_V", 0, sheet.nominal_V);
    }
    readWiggle(keys, root, sheet);
    readDrive(keys, root, sheet);
    readCautions(keys, root, sheet);
    if (keys.failed()) return keys.error();
    doubt(sheet);
    return sheet;
}

Result<Sheet> parseSheet(std::string_view toml, const std::string& where) {
    auto root = parseToml(toml, where);
    if (!root) return root.error();
    auto sheet = sheetFromToml(*root, {where});
    if (sheet) sheet->toml = std::string(toml);
    return sheet;
}

} // namespace stillwire
