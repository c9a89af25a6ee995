// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/hands/scene.hpp"

#include <algorithm>
#include <cmath>

namespace stillwire::hands {
namespace {

constexpr double kTurn = 6.283185307179586;

double smooth(double share) {
    const double s = std::clamp(share, 0.0, 1.0);
    return s * s * (3 - 2 * s);
}

double air_V(const Loose& loose, double at_s) {
    switch (loose.air) {
    case Air::pulledToZero: return 0;
    case Air::wanders:
        return loose.size_V * (0.6 * std::sin(kTurn * 0.8 * at_s + loose.phase) +
                               0.4 * std::sin(kTurn * 2.3 * at_s + 2 * loose.phase));
    case Air::hums: return loose.size_V * std::sin(kTurn * 50.2 * at_s + loose.phase);
    }
    return 0;
}

template <class Part> void byTime(std::vector<Part>& parts) {
    std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.at_s < b.at_s; });
}

} // namespace

void Scene::sort() {
    byTime(lead);
    byTime(marks);
}

double Wires::reference_V(double at_s) const {
    double share = 1 - scene_.sagPerSecond * at_s;
    for (const Sag& s : scene_.sags)
        if (at_s >= s.from_s && at_s < s.to_s)
            share *= s.factor * (1 + s.ripple * std::sin(kTurn * s.ripple_Hz * (at_s - s.from_s)));
    // A key that is turned off lets the supply fade in a fifth of a second.
    for (const Span& off : scene_.keyOff) {
        if (off.holds(at_s)) share *= std::exp(-(at_s - off.from_s) / 0.2);
        if (at_s >= off.to_s) share *= smooth((at_s - off.to_s) / 0.15);
    }
    return scene_.reference_V * share;
}

double Wires::ground_V(double at_s) const {
    double v = scene_.ground_V + scene_.groundPerSecond_V * at_s;
    for (const GroundShift& s : scene_.shifts)
        if (at_s >= s.from_s && at_s < s.to_s) v += s.by_V;
    return v;
}

double Wires::bump_V(const Bump& b, double at_s) const {
    if (at_s < b.from_s || at_s > b.to_s + b.fall_s) return 0;
    const double shape = std::min(smooth((at_s - b.from_s) / b.rise_s), 1 - smooth((at_s - b.to_s) / b.fall_s));
    return shape * (b.depth_V + b.wobble_V * std::sin(kTurn * b.wobble_Hz * (at_s - b.from_s)));
}

double Wires::lever_V(double at_s) {
    const std::vector<Key>& way = scene_.way;
    while (key_ + 1 < way.size() && way[key_ + 1].at_s <= at_s) ++key_;
    double v = way[key_].level_V;
    if (key_ + 1 < way.size()) {
        const Key &a = way[key_], &b = way[key_ + 1];
        v += (b.level_V - a.level_V) * smooth((at_s - a.at_s) / (b.at_s - a.at_s));
    }
    for (const Bump& b : scene_.bumps) v += bump_V(b, at_s);
    while (held_ < scene_.held.size() && scene_.held[held_].to_s <= at_s) ++held_;
    if (held_ < scene_.held.size() && scene_.held[held_].holds(at_s))
        v += scene_.tremor_V * (std::sin(kTurn * 0.7 * at_s) + std::sin(kTurn * 1.9 * at_s + 1));
    return v;
}

double Wires::tip_V(double at_s) {
    while (lead_ + 1 < scene_.lead.size() && scene_.lead[lead_ + 1].at_s <= at_s) ++lead_;
    const double lever = lever_V(at_s);
    for (const Loose& l : scene_.loose)
        if (at_s >= l.from_s && at_s < l.to_s) return air_V(l, at_s);
    const double reference = reference_V(at_s), ground = ground_V(at_s);
    switch (scene_.lead[lead_].wire) {
    case Wire::none: return 0.003 * std::sin(kTurn * 0.9 * at_s);
    case Wire::reference: return reference;
    case Wire::ground: return ground;
    case Wire::signal: break;
    }
    if (scene_.stuck_V >= 0) return std::min(scene_.stuck_V, reference);
    double v = ground + lever / scene_.nominal_V * (reference - ground);
    for (const Drop& d : scene_.drops)
        if (at_s >= d.from_s && at_s < d.to_s) v += d.share * (d.toward_V - v);
    return v;
}

} // namespace stillwire::hands
