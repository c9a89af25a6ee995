// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/bench/truth.hpp"

#include <charconv>
#include <cmath>

namespace stillwire {
namespace {

// To the microvolt and microsecond: finer digits differ between mathematics libraries.
std::string figure(double value) {
    const double rounded = std::round(value * 1e6) / 1e6;
    char text[32];
    const auto end = std::to_chars(text, text + sizeof text, rounded == 0 ? 0.0 : rounded);
    return std::string(text, end.ptr);
}

std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (static_cast<unsigned char>(c) < 0x20) {
            out += ' ';
        } else {
            out += c;
        }
    }
    return out + "\"";
}

template <class T, class F> std::string list(const std::vector<T>& items, const char* separator, F&& one) {
    std::string out = "[";
    for (const T& item : items) {
        if (out.size() > 1) out += ",";
        out += separator + one(item);
    }
    return out + (items.empty() || *separator != '\n' ? "]" : "\n  ]");
}

} // namespace

std::string truthJson(const Truth& truth) {
    constexpr const char* kLine = "\n    ";
    std::string out = "{\n  \"verdict\": ";
    out += quoted(decisionName(truth.verdict));
    out += ",\n  \"causes\": " + list(truth.causes, "", quoted);
    out += ",\n  \"reference_V\": " + figure(truth.reference_V);
    out += ",\n  \"ground_V\": " + figure(truth.ground_V);
    out += ",\n  \"level_V\": " + list(truth.level_V, "", figure);
    out += ",\n  \"hangs\": " + std::to_string(truth.hangs);
    out += ",\n  \"events\": " + list(truth.events, kLine, [](const TruthEvent& e) {
               std::string one = "{\"cause\": " + quoted(e.cause) + ", \"from_s\": " + figure(e.from_s);
               one += ", \"to_s\": " + figure(e.to_s) + ", \"depth_V\": " + figure(e.depth_V);
               one += ", \"step\": " + quoted(e.step) + ", \"pose\": " + quoted(e.pose) + ", \"touched\": ";
               one += list(e.touched, "", [](const TruthTouch& t) {
                   return "{\"reading\": " + std::to_string(t.reading) + ", \"depth_V\": " + figure(t.depth_V) + "}";
               });
               return one + "}";
           });
    const auto span = [&](const char* key, const std::string& name, double from_s, double to_s) {
        return "{\"" + std::string(key) + "\": " + quoted(name) + ", \"from_s\": " + figure(from_s) +
               ", \"to_s\": " + figure(to_s) + "}";
    };
    out += ",\n  \"spans\": " +
           list(truth.spans, kLine, [&](const TruthSpan& s) { return span("kind", s.kind, s.from_s, s.to_s); });
    out += ",\n  \"blind\": " +
           list(truth.blind, kLine, [&](const TruthBlind& b) { return span("cause", b.cause, b.from_s, b.to_s); });
    out += ",\n  \"visits\": " + list(truth.visits, kLine, [](const TruthVisit& v) {
               return "{\"position\": " + quoted(v.position) + ", \"from_s\": " + figure(v.from_s) +
                      ", \"level_V\": " + figure(v.level_V) + ", \"hang\": " + (v.hang ? "true" : "false") + "}";
           });
    return out + "\n}\n";
}

} // namespace stillwire
