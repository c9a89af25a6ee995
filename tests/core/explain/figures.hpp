// SPDX-License-Identifier: GPL-3.0-or-later
// Every figure of the tuning by name, so that each can be turned by itself. A figure that is missing here, or stands
// here twice, does not build.
#pragma once

#include "core/explain/tuning.hpp"

#include <cmath>
#include <concepts>
#include <cstddef>
#include <functional>
#include <iterator>
#include <string>
#include <type_traits>
#include <vector>

namespace stillwire::explain {

// A figure of one part: a real number, or a count.
template <typename Part> struct Listed {
    const char* name;
    double Part::*real = nullptr;
    int Part::*whole = nullptr;
    constexpr Listed(const char* n, double Part::*r) : name(n), real(r) {}
    constexpr Listed(const char* n, int Part::*w) : name(n), whole(w) {}
    [[nodiscard]] constexpr bool sameAs(const Listed& other) const {
        return real == other.real && whole == other.whole;
    }
};

using T = Tuning;
inline constexpr Listed<T::Reach> kReach[] = {
    {"least_V", &T::Reach::least_V}, {"noises", &T::Reach::noises},           {"counts", &T::Reach::counts},
    {"back", &T::Reach::back},       {"quietNoises", &T::Reach::quietNoises}, {"quietCounts", &T::Reach::quietCounts},
    {"told_V", &T::Reach::told_V},
};
inline constexpr Listed<T::Held> kHeld[] = {
    {"follows_s", &T::Held::follows_s},
    {"stirredFollows", &T::Held::stirredFollows},
    {"few", &T::Held::few},
    {"known", &T::Held::known},
    {"refresh", &T::Held::refresh},
    {"refresh_s", &T::Held::refresh_s},
    {"remembers", &T::Held::remembers},
    {"unknownCounts", &T::Held::unknownCounts},
    {"teaches", &T::Held::teaches},
    {"looks", &T::Held::looks},
    {"surprise", &T::Held::surprise},
    {"young", &T::Held::young},
    {"lean", &T::Held::lean},
    {"louder", &T::Held::louder},
    {"noisy", &T::Held::noisy},
};
inline constexpr Listed<T::Hand> kHand[] = {
    {"least_V", &T::Hand::least_V}, {"most_V", &T::Hand::most_V}, {"share", &T::Hand::share},
    {"held_V", &T::Hand::held_V},   {"begins", &T::Hand::begins}, {"unknown", &T::Hand::unknown},
    {"creeps", &T::Hand::creeps},   {"later", &T::Hand::later},
};
inline constexpr Listed<T::Away> kAway[] = {
    {"begins", &T::Away::begins},
    {"young", &T::Away::young},
    {"young_s", &T::Away::young_s},
    {"perSecond", &T::Away::perSecond},
    {"flat", &T::Away::flat},
    {"comesBack", &T::Away::comesBack},
    {"perSecondRail", &T::Away::perSecondRail},
    {"railShare", &T::Away::railShare},
    {"settlesElsewhere", &T::Away::settlesElsewhere},
    {"dropoutGoesOn", &T::Away::dropoutGoesOn},
    {"flat_s", &T::Away::flat_s},
    {"flatIntervals", &T::Away::flatIntervals},
    {"flatSlack", &T::Away::flatSlack},
    {"stillFlat_s", &T::Away::stillFlat_s},
    {"stillFlatReadings", &T::Away::stillFlatReadings},
    {"movingFlatReadings", &T::Away::movingFlatReadings},
};
inline constexpr Listed<T::Moving> kMoving[] = {
    {"begins", &T::Moving::begins},           {"unasked", &T::Moving::unasked},
    {"inStep", &T::Moving::inStep},           {"asked", &T::Moving::asked},
    {"perSecond", &T::Moving::perSecond},     {"pausedPerSecond", &T::Moving::pausedPerSecond},
    {"paused", &T::Moving::paused},           {"turns", &T::Moving::turns},
    {"settles", &T::Moving::settles},         {"returns", &T::Moving::returns},
    {"atRail", &T::Moving::atRail},           {"ignored", &T::Moving::ignored},
    {"awaited", &T::Moving::awaited},         {"patience_s", &T::Moving::patience_s},
    {"early_s", &T::Moving::early_s},         {"grace_s", &T::Moving::grace_s},
    {"leadGrace_s", &T::Moving::leadGrace_s},
};
inline constexpr Listed<T::Line> kLine[] = {
    {"uneven", &T::Line::uneven},       {"prior", &T::Line::prior},   {"young", &T::Line::young},
    {"remembers", &T::Line::remembers}, {"memory", &T::Line::memory}, {"onLine", &T::Line::onLine},
    {"begins", &T::Line::begins},       {"even", &T::Line::even},     {"faster", &T::Line::faster},
    {"longest_s", &T::Line::longest_s},
};
inline constexpr Listed<T::Search> kSearch[] = {
    {"survivors", &T::Search::survivors},     {"alike", &T::Search::alike},
    {"margin", &T::Search::margin},           {"lag_s", &T::Search::lag_s},
    {"lagReadings", &T::Search::lagReadings}, {"freshGap", &T::Search::freshGap},
};
inline constexpr Listed<T> kAlone[] = {
    {"unforeseen", &T::unforeseen},
    {"foreseen", &T::foreseen},
};
inline constexpr std::size_t kParts = 7; // the lists above, but for the last

// How many members an aggregate has: as many values as it can be made from.
struct Anything {
    template <typename To> operator To() const;
};
template <typename Of, typename... Values> constexpr std::size_t members() {
    if constexpr (requires { Of{Values{}..., Anything{}}; })
        return members<Of, Values..., Anything>();
    else
        return sizeof...(Values);
}
template <typename Of, std::size_t N> constexpr bool complete(const Listed<Of> (&list)[N], std::size_t others = 0) {
    for (std::size_t i = 0; i < N; ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (list[i].sameAs(list[j])) return false;
    return N + others == members<Of>();
}
static_assert(complete(kReach) && complete(kHeld) && complete(kHand) && complete(kAway) && complete(kMoving) &&
                  complete(kLine) && complete(kSearch) && complete(kAlone, kParts),
              "a figure or a part of the tuning is not listed above, or twice");

struct Figure {
    std::string name;
    double value = 0;
    std::function<bool(Tuning&, double)> multiply; // false: rounded, it is what it was, or nothing is left of it
};

inline bool multiply(double& figure, double by) {
    figure *= by;
    return true;
}
inline bool multiply(int& figure, double by) {
    const int before = figure;
    figure = static_cast<int>(std::lround(figure * by));
    return figure != before && figure > 0;
}

template <typename Of, std::size_t N, typename PartOf>
void addFigures(std::vector<Figure>& all, const char* part, const Listed<Of> (&list)[N], PartOf partOf) {
    Tuning as{};
    for (const Listed<Of>& one : list) {
        Of& in = partOf(as);
        all.push_back({std::string(part) + one.name, one.real ? in.*one.real : in.*one.whole,
                       [one, partOf](Tuning& tuning, double by) {
                           Of& of = partOf(tuning);
                           return one.real ? multiply(of.*one.real, by) : multiply(of.*one.whole, by);
                       }});
    }
}

[[nodiscard]] inline std::vector<Figure> figures() {
    std::vector<Figure> all;
    addFigures(
        all, "reach.", kReach, [](Tuning & t) -> auto& { return t.reach; });
    addFigures(
        all, "held.", kHeld, [](Tuning & t) -> auto& { return t.held; });
    addFigures(
        all, "hand.", kHand, [](Tuning & t) -> auto& { return t.hand; });
    addFigures(
        all, "", kAlone, [](Tuning & t) -> auto& { return t; });
    addFigures(
        all, "away.", kAway, [](Tuning & t) -> auto& { return t.away; });
    addFigures(
        all, "moving.", kMoving, [](Tuning & t) -> auto& { return t.moving; });
    addFigures(
        all, "line.", kLine, [](Tuning & t) -> auto& { return t.line; });
    addFigures(
        all, "search.", kSearch, [](Tuning & t) -> auto& { return t.search; });
    return all;
}

} // namespace stillwire::explain
