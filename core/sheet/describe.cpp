// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/from_toml.hpp"

namespace stillwire {

namespace {

TomlNode node(double value) { return {value, 0}; }
TomlNode node(std::string value) { return {std::move(value), 0}; }
TomlNode node(TomlTable value) { return {std::move(value), 0}; }
TomlNode node(TomlArray value) { return {std::move(value), 0}; }
TomlNode formatOne() { return {std::int64_t{1}, 0}; }

} // namespace

std::string describe(const Sheet& sheet) {
    TomlTable root;
    root["format"] = formatOne();
    root["name"] = node(sheet.name);
    if (!sheet.source.empty()) root["source"] = node(sheet.source);
    root["reference"] = node(TomlTable{{"nominal_V", node(sheet.nominal_V)},
                                       {"min_V", node(sheet.reference.min_V)},
                                       {"max_V", node(sheet.reference.max_V)}});
    root["ground"] = node(TomlTable{{"max_drop_V", node(sheet.maxDrop_V)}});
    TomlArray positions;
    for (const Position& p : sheet.positions) {
        TomlTable position{{"name", node(p.name)},
                           {"min_V", node(p.window.min_V)},
                           {"max_V", node(p.window.max_V)},
                           {"aim_V", node(p.aim_V)}};
        if (p.rest) position["rest"] = TomlNode{true, 0};
        positions.push_back(node(std::move(position)));
    }
    root["position"] = node(std::move(positions));
    if (sheet.driftAllowance_V) {
        root["adjustment"] = node(TomlTable{{"drift_allowance_V", node(*sheet.driftAllowance_V)}});
    }
    root["wiggle"] = node(TomlTable{{"play_V", node(sheet.play_V)},
                                    {"lean_max_V", node(sheet.leanMax_V)},
                                    {"fault_share", node(sheet.referenceFault.share)},
                                    {"fault_section_share", node(sheet.referenceFault.sectionShare)},
                                    {"fault_depth_V", node(sheet.referenceFault.depth_V)},
                                    {"fault_level_share", node(sheet.referenceFault.levelShare)}});
    if (sheet.drive) {
        root["drive"] = node(TomlTable{{"none_at_V", node(sheet.drive->noneAt_V)},
                                       {"full_at_V", node(sheet.drive->fullAt_V)},
                                       {"debounce_s", node(sheet.drive->debounce_s)}});
    }
    if (!sheet.cautions.empty()) {
        TomlArray texts;
        for (const std::string& text : sheet.cautions) texts.push_back(node(text));
        root["cautions"] = node(TomlTable{{"text", node(std::move(texts))}});
    }
    return writeToml(node(std::move(root)), "");
}

std::string describe(const MeterTraits& meter) {
    TomlTable root;
    root["format"] = formatOne();
    root["name"] = node(meter.name.empty() ? std::string("unnamed") : meter.name);
    if (meter.interval_s > 0) root["interval_s"] = node(meter.interval_s);
    if (meter.aperture_s) root["aperture_s"] = node(*meter.aperture_s);
    TomlArray ranges;
    for (const MeterRange& r : meter.ranges) {
        ranges.push_back(node(TomlTable{{"full_scale_V", node(r.fullScale_V)},
                                        {"resolution_V", node(r.resolution_V)},
                                        {"accuracy_percent", node(r.accuracyPercent)},
                                        {"accuracy_counts", node(r.accuracyCounts)}}));
    }
    if (!ranges.empty()) root["range"] = node(std::move(ranges));
    return writeToml(node(std::move(root)), "");
}

} // namespace stillwire
