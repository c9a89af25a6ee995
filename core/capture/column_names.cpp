// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/column_names.hpp"

#include "core/text/number.hpp"

#include <algorithm>
#include <array>

namespace stillwire {

namespace {

constexpr std::uint32_t bits(Says a) { return static_cast<std::uint32_t>(a); }
constexpr std::uint32_t operator|(Says a, Says b) { return bits(a) | bits(b); }

struct Word {
    std::string_view text; // folded
    std::uint32_t says;
};

// English, Spanish, German, French, Italian, Portuguese, Dutch, Swedish and Polish.
constexpr Word kWords[] = {
    // The time.
    {"time", bits(Says::time)},
    {"t", bits(Says::time)},
    {"timestamp", bits(Says::time)},
    {"datetime", Says::time | Says::date},
    {"elapsed", bits(Says::time)},
    {"clock", bits(Says::time)},
    {"when", bits(Says::time)},
    {"tiempo", bits(Says::time)},
    {"hora", bits(Says::time)},
    {"zeit", bits(Says::time)},
    {"uhrzeit", bits(Says::time)},
    {"zeitstempel", bits(Says::time)},
    {"messzeit", bits(Says::time)},
    {"temps", bits(Says::time)},
    {"heure", bits(Says::time)},
    {"horodatage", bits(Says::time)},
    {"tempo", bits(Says::time)},
    {"ora", bits(Says::time)},
    {"czas", bits(Says::time)},
    {"tijd", bits(Says::time)},
    {"tijdstip", bits(Says::time)},
    {"tid", bits(Says::time)},
    {"klockslag", bits(Says::time)},
    {"godzina", bits(Says::time)},
    {"date", bits(Says::date)},
    {"fecha", bits(Says::date)},
    {"datum", bits(Says::date)},
    {"data", Says::date | Says::figure},
    // The volts.
    {"voltage", bits(Says::volts)},
    {"volts", bits(Says::volts)},
    {"volt", bits(Says::volts)},
    {"dcv", bits(Says::volts)},
    {"vdc", bits(Says::volts)},
    {"u", bits(Says::volts)},
    {"v", bits(Says::volts)},
    {"voltaje", bits(Says::volts)},
    {"tension", bits(Says::volts)},
    {"voltios", bits(Says::volts)},
    {"spannung", bits(Says::volts)},
    {"messspannung", bits(Says::volts)},
    {"gleichspannung", bits(Says::volts)},
    {"tensione", bits(Says::volts)},
    {"tensao", bits(Says::volts)},
    {"spanning", bits(Says::volts)},
    {"napiecie", bits(Says::volts)},
    // Values of something.
    {"value", bits(Says::figure)},
    {"reading", bits(Says::figure)},
    {"measurement", bits(Says::figure)},
    {"display", bits(Says::figure)},
    {"main", bits(Says::figure)},
    {"primary", bits(Says::figure)},
    {"channel", bits(Says::figure)},
    {"ch", bits(Says::figure)},
    {"input", bits(Says::figure)},
    {"probe", bits(Says::figure)},
    {"valor", bits(Says::figure)},
    {"lectura", bits(Says::figure)},
    {"medida", bits(Says::figure)},
    {"medicion", bits(Says::figure)},
    {"canal", bits(Says::figure)},
    {"wert", bits(Says::figure)},
    {"messwert", bits(Says::figure)},
    {"anzeige", bits(Says::figure)},
    {"kanal", bits(Says::figure)},
    {"valeur", bits(Says::figure)},
    {"mesure", bits(Says::figure)},
    {"voie", bits(Says::figure)},
    {"valore", bits(Says::figure)},
    {"misura", bits(Says::figure)},
    {"canale", bits(Says::figure)},
    {"leitura", bits(Says::figure)},
    {"waarde", bits(Says::figure)},
    {"meetwaarde", bits(Says::figure)},
    {"kanaal", bits(Says::figure)},
    {"varde", bits(Says::figure)},
    {"matvarde", bits(Says::figure)},
    {"wartosc", bits(Says::figure)},
    {"pomiar", bits(Says::figure)},
    {"odczyt", bits(Says::figure)},
    // The sensor's wires.
    {"signal", Says::figure | Says::signal},
    {"sig", Says::figure | Says::signal},
    {"senal", Says::figure | Says::signal},
    {"segnale", Says::figure | Says::signal},
    {"sinal", Says::figure | Says::signal},
    {"signaal", Says::figure | Says::signal},
    {"sygnal", Says::figure | Says::signal},
    {"signalspannung", Says::volts | Says::signal},
    {"reference", Says::figure | Says::reference},
    {"ref", Says::figure | Says::reference},
    {"vref", Says::volts | Says::reference},
    {"uref", Says::volts | Says::reference},
    {"referencia", Says::figure | Says::reference},
    {"referenz", Says::figure | Says::reference},
    {"referenzspannung", Says::volts | Says::reference},
    {"riferimento", Says::figure | Says::reference},
    {"referentie", Says::figure | Says::reference},
    {"referens", Says::figure | Says::reference},
    {"odniesienie", Says::figure | Says::reference},
    // What was read, against what was set; and means.
    {"measured", Says::figure | Says::measured},
    {"actual", Says::figure | Says::measured},
    {"live", Says::figure | Says::measured},
    {"medido", Says::figure | Says::measured},
    {"gemessen", Says::figure | Says::measured},
    {"istwert", Says::figure | Says::measured},
    {"ist", Says::figure | Says::measured},
    {"mesuree", Says::figure | Says::measured},
    {"mesure", Says::figure | Says::measured},
    {"misurata", Says::figure | Says::measured},
    {"medida", Says::figure | Says::measured},
    {"gemeten", Says::figure | Says::measured},
    {"uppmatt", Says::figure | Says::measured},
    {"avg", Says::figure | Says::mean},
    {"average", Says::figure | Says::mean},
    {"mean", Says::figure | Says::mean},
    {"promedio", Says::figure | Says::mean},
    {"media", Says::figure | Says::mean},
    {"mittel", Says::figure | Says::mean},
    {"mittelwert", Says::figure | Says::mean},
    {"durchschnitt", Says::figure | Says::mean},
    {"moyenne", Says::figure | Says::mean},
    {"moy", Says::figure | Says::mean},
    {"gemiddelde", Says::figure | Says::mean},
    {"medel", Says::figure | Says::mean},
    {"medelvarde", Says::figure | Says::mean},
    {"srednia", Says::figure | Says::mean},
    // Beside the value.
    {"unit", bits(Says::unit)},
    {"units", bits(Says::unit)},
    {"function", Says::unit | Says::status},
    {"unidad", bits(Says::unit)},
    {"funcion", Says::unit | Says::status},
    {"einheit", bits(Says::unit)},
    {"funktion", Says::unit | Says::status},
    {"unite", bits(Says::unit)},
    {"fonction", Says::unit | Says::status},
    {"unita", bits(Says::unit)},
    {"funzione", Says::unit | Says::status},
    {"unidade", bits(Says::unit)},
    {"eenheid", bits(Says::unit)},
    {"functie", Says::unit | Says::status},
    {"enhet", bits(Says::unit)},
    {"jednostka", bits(Says::unit)},
    {"status", bits(Says::status)},
    {"state", bits(Says::status)},
    {"mode", bits(Says::status)},
    {"estado", bits(Says::status)},
    {"modo", bits(Says::status)},
    {"zustand", bits(Says::status)},
    {"modus", bits(Says::status)},
    {"etat", bits(Says::status)},
    {"stato", bits(Says::status)},
    {"stan", bits(Says::status)},
    {"hold", bits(Says::hold)},
    {"flags", bits(Says::flags)},
    {"mark", bits(Says::mark)},
    // Neither: what is set, extremes, other quantities, times that are no reading's, counters.
    {"ac", bits(Says::other)},
    {"acv", bits(Says::other)},
    {"vac", bits(Says::other)},
    {"rms", bits(Says::other)},
    {"wechselspannung", bits(Says::other)},
    {"ca", bits(Says::other)},
    {"min", bits(Says::other)},
    {"minimum", bits(Says::other)},
    {"minimo", bits(Says::other)},
    {"minima", bits(Says::other)},
    {"max", bits(Says::other)},
    {"maximum", bits(Says::other)},
    {"maximo", bits(Says::other)},
    {"maxima", bits(Says::other)},
    {"massimo", bits(Says::other)},
    {"massima", bits(Says::other)},
    {"maximal", bits(Says::other)},
    {"minimal", bits(Says::other)},
    {"peak", bits(Says::other)},
    {"pico", bits(Says::other)},
    {"spitze", bits(Says::other)},
    {"highest", bits(Says::other)},
    {"lowest", bits(Says::other)},
    {"low", bits(Says::other)},
    {"high", bits(Says::other)},
    {"set", bits(Says::other)},
    {"setpoint", bits(Says::other)},
    {"target", bits(Says::other)},
    {"nominal", bits(Says::other)},
    {"expected", bits(Says::other)},
    {"consigna", bits(Says::other)},
    {"ajuste", bits(Says::other)},
    {"soll", bits(Says::other)},
    {"sollwert", bits(Says::other)},
    {"consigne", bits(Says::other)},
    {"limit", bits(Says::other)},
    {"limits", bits(Says::other)},
    {"limite", bits(Says::other)},
    {"grenzwert", bits(Says::other)},
    {"range", bits(Says::other)},
    {"rango", bits(Says::other)},
    {"bereich", bits(Says::other)},
    {"gamme", bits(Says::other)},
    {"resolution", bits(Says::other)},
    {"accuracy", bits(Says::other)},
    {"uncertainty", bits(Says::other)},
    {"deviation", bits(Says::other)},
    {"stddev", bits(Says::other)},
    {"sigma", bits(Says::other)},
    {"noise", bits(Says::other)},
    {"offset", bits(Says::other)},
    {"delta", bits(Says::other)},
    {"difference", bits(Says::other)},
    {"rel", bits(Says::other)},
    {"ratio", bits(Says::other)},
    {"percent", bits(Says::other)},
    {"resistance", bits(Says::other)},
    {"resistencia", bits(Says::other)},
    {"widerstand", bits(Says::other)},
    {"frequency", bits(Says::other)},
    {"frecuencia", bits(Says::other)},
    {"frequenz", bits(Says::other)},
    {"temperature", bits(Says::other)},
    {"temperatura", bits(Says::other)},
    {"temperatur", bits(Says::other)},
    {"temp", bits(Says::other)},
    {"power", bits(Says::other)},
    {"potencia", bits(Says::other)},
    {"leistung", bits(Says::other)},
    {"humidity", bits(Says::other)},
    {"pressure", bits(Says::other)},
    {"battery", bits(Says::other)},
    {"bateria", bits(Says::other)},
    {"batterie", bits(Says::other)},
    {"batteria", bits(Says::other)},
    {"batterij", bits(Says::other)},
    {"supply", bits(Says::other)},
    {"ground", bits(Says::other)},
    {"masa", bits(Says::other)},
    {"masse", bits(Says::other)},
    {"interval", bits(Says::other)},
    {"intervalo", bits(Says::other)},
    {"intervall", bits(Says::other)},
    {"aperture", bits(Says::other)},
    {"gate", bits(Says::other)},
    {"integration", bits(Says::other)},
    {"zone", bits(Says::other)},
    {"rate", bits(Says::other)},
    {"number", bits(Says::other)},
    {"no", bits(Says::other)},
    {"nr", bits(Says::other)},
    {"num", bits(Says::other)},
    {"index", bits(Says::other)},
    {"count", bits(Says::other)},
    {"counts", bits(Says::other)},
    {"note", bits(Says::other)},
    {"notes", bits(Says::other)},
    {"comment", bits(Says::other)},
    {"serial", bits(Says::other)},
    {"software", bits(Says::other)},
    {"version", bits(Says::other)},
};

struct UnitName {
    std::string_view text; // folded, "dc" taken out
    ColumnUnit unit;
};
using Of = ColumnUnit::Of;
constexpr UnitName kUnits[] = {
    {"s", {Of::time, 1'000'000, 0}},
    {"sec", {Of::time, 1'000'000, 0}},
    {"secs", {Of::time, 1'000'000, 0}},
    {"second", {Of::time, 1'000'000, 0}},
    {"seconds", {Of::time, 1'000'000, 0}},
    {"seg", {Of::time, 1'000'000, 0}},
    {"segundos", {Of::time, 1'000'000, 0}},
    {"sek", {Of::time, 1'000'000, 0}},
    {"sekunden", {Of::time, 1'000'000, 0}},
    {"secondes", {Of::time, 1'000'000, 0}},
    {"secondi", {Of::time, 1'000'000, 0}},
    {"ms", {Of::time, 1'000, 0}},
    {"msec", {Of::time, 1'000, 0}},
    {"msecs", {Of::time, 1'000, 0}},
    {"millis", {Of::time, 1'000, 0}},
    {"millisecond", {Of::time, 1'000, 0}},
    {"milliseconds", {Of::time, 1'000, 0}},
    {"milisegundos", {Of::time, 1'000, 0}},
    {"millisekunden", {Of::time, 1'000, 0}},
    {"us", {Of::time, 1, 0}},
    {"\xC2\xB5s", {Of::time, 1, 0}},
    {"\xCE\xBCs", {Of::time, 1, 0}},
    {"microseconds", {Of::time, 1, 0}},
    {"min", {Of::time, 60'000'000, 0}},
    {"mins", {Of::time, 60'000'000, 0}},
    {"minutes", {Of::time, 60'000'000, 0}},
    {"minutos", {Of::time, 60'000'000, 0}},
    {"minuten", {Of::time, 60'000'000, 0}},
    {"h", {Of::time, 3'600'000'000, 0}},
    {"hr", {Of::time, 3'600'000'000, 0}},
    {"hours", {Of::time, 3'600'000'000, 0}},
    {"horas", {Of::time, 3'600'000'000, 0}},
    {"stunden", {Of::time, 3'600'000'000, 0}},
    {"days", {Of::time, 86'400'000'000, 0}},
    {"v", {Of::volts, 0, 0}},
    {"volt", {Of::volts, 0, 0}},
    {"volts", {Of::volts, 0, 0}},
    {"voltios", {Of::volts, 0, 0}},
    {"mv", {Of::volts, 0, -3}},
    {"millivolt", {Of::volts, 0, -3}},
    {"millivolts", {Of::volts, 0, -3}},
    {"uv", {Of::volts, 0, -6}},
    {"\xC2\xB5v", {Of::volts, 0, -6}},
    {"\xCE\xBCv", {Of::volts, 0, -6}},
    {"kv", {Of::volts, 0, 3}},
    {"a", {Of::other, 0, 0}},
    {"ma", {Of::other, 0, 0}},
    {"ua", {Of::other, 0, 0}},
    {"vac", {Of::other, 0, 0}},
    {"mvac", {Of::other, 0, 0}},
    {"acv", {Of::other, 0, 0}},
    {"ohm", {Of::other, 0, 0}},
    {"ohms", {Of::other, 0, 0}},
    {"kohm", {Of::other, 0, 0}},
    {"mohm", {Of::other, 0, 0}},
    {"\xCE\xA9", {Of::other, 0, 0}},
    {"\xE2\x84\xA6", {Of::other, 0, 0}},
    {"c", {Of::other, 0, 0}},
    {"f", {Of::other, 0, 0}},
    {"\xC2\xB0"
     "c",
     {Of::other, 0, 0}},
    {"\xC2\xB0"
     "f",
     {Of::other, 0, 0}},
    {"%", {Of::other, 0, 0}},
    {"hz", {Of::other, 0, 0}},
    {"khz", {Of::other, 0, 0}},
    {"w", {Of::other, 0, 0}},
    {"kw", {Of::other, 0, 0}},
    {"wh", {Of::other, 0, 0}},
    {"ah", {Of::other, 0, 0}},
    {"mah", {Of::other, 0, 0}},
    {"nf", {Of::other, 0, 0}},
    {"uf", {Of::other, 0, 0}},
    {"bar", {Of::other, 0, 0}},
    {"rpm", {Of::other, 0, 0}},
};

// The second bytes of U+00C0 to U+00FF behind 0xC3, and the letters of U+0100 to U+017F that the languages above
// have.
constexpr std::string_view kLatin1 = "aaaaaaaceeeeiiiidnooooo*ouuuuypsaaaaaaaceeeeiiiidnooooo/ouuuuypy";
struct Accented {
    std::string_view letter;
    char plain;
};
constexpr std::array<Accented, 18> kAccented = {{{"\xC4\x84", 'a'},
                                                 {"\xC4\x85", 'a'},
                                                 {"\xC4\x86", 'c'},
                                                 {"\xC4\x87", 'c'},
                                                 {"\xC4\x98", 'e'},
                                                 {"\xC4\x99", 'e'},
                                                 {"\xC5\x81", 'l'},
                                                 {"\xC5\x82", 'l'},
                                                 {"\xC5\x83", 'n'},
                                                 {"\xC5\x84", 'n'},
                                                 {"\xC5\x9A", 's'},
                                                 {"\xC5\x9B", 's'},
                                                 {"\xC5\xB9", 'z'},
                                                 {"\xC5\xBA", 'z'},
                                                 {"\xC5\xBB", 'z'},
                                                 {"\xC5\xBC", 'z'},
                                                 {"\xC5\x92", 'o'},
                                                 {"\xC5\x93", 'o'}}};

bool isWordByte(char c) { return (c >= 'a' && c <= 'z') || (c & 0x80) != 0; }

std::uint32_t wordSays(std::string_view word) {
    std::uint32_t says = 0;
    for (const Word& one : kWords)
        if (one.text == word) says |= one.says;
    return says;
}

// A unit at the end, in brackets, or behind "_", "/" or "in": taken off the name.
ColumnUnit takeUnit(std::string& name) {
    if (const ColumnUnit whole = readUnit(name); whole.of != Of::nothing) {
        name.clear();
        return whole;
    }
    const auto last = name.find_last_not_of(' ');
    if (last == std::string::npos) return {};
    if (name[last] == ')' || name[last] == ']') {
        const std::size_t open = name.find_last_of("([");
        if (open == std::string::npos) return {};
        const ColumnUnit unit = readUnit(std::string_view(name).substr(open + 1, last - open - 1));
        if (unit.of != Of::nothing) name.resize(open);
        return unit;
    }
    // "time in ms", "u_mv", "t/s", "voltage, v", "voltage mv dc"
    for (std::size_t at = name.find_first_of("_/, "); at != std::string::npos;
         at = name.find_first_of("_/, ", at + 1)) {
        const ColumnUnit unit = readUnit(std::string_view(name).substr(at + 1));
        if (unit.of == Of::nothing) continue;
        name.resize(at);
        if (name.size() > 3 && name.ends_with(" in")) name.resize(name.size() - 3);
        return unit;
    }
    return {};
}

} // namespace

std::string foldedText(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c | 0x20);
            continue;
        }
        const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
        if (c == '\xC3' && next >= 0x80 && next < 0xC0) {
            out += kLatin1[next - 0x80];
            ++i;
            continue;
        }
        const auto accented = std::find_if(kAccented.begin(), kAccented.end(),
                                           [&](const Accented& one) { return text.substr(i, 2) == one.letter; });
        if (accented != kAccented.end()) {
            out += accented->plain;
            ++i;
            continue;
        }
        out += c;
    }
    return out;
}

ColumnUnit readUnit(std::string_view text) {
    std::string unit = foldedText(trimmed(text));
    const auto known = [&unit]() -> const UnitName* {
        const auto found =
            std::find_if(std::begin(kUnits), std::end(kUnits), [&](const UnitName& one) { return one.text == unit; });
        return found == std::end(kUnits) ? nullptr : found;
    };
    if (const UnitName* one = known()) return one->unit;
    // "V DC", "DCV", "mV=": direct volts however they are written.
    const std::string before = unit;
    for (const std::string_view dc : {"dc", "cc", "=", "\xE2\x8E\x93"})
        for (std::size_t at = unit.find(dc); at != std::string::npos; at = unit.find(dc)) unit.erase(at, dc.size());
    std::erase_if(unit, [](char c) { return c == ' ' || c == '_' || c == '-' || c == '.'; });
    if (unit == before) return {};
    const UnitName* one = known();
    return one && one->unit.of != Of::time ? one->unit : ColumnUnit{};
}

ColumnName readColumnName(std::string_view name) {
    std::string folded = foldedText(trimmed(name));
    ColumnName read;
    // "volts" and "seconds" are names as much as units.
    const std::string whole = folded;
    read.unit = takeUnit(folded);
    if (folded.empty()) read.says |= wordSays(whole);
    for (std::size_t i = 0; i < folded.size();) {
        std::size_t end = i;
        while (end < folded.size() && isWordByte(folded[end])) ++end;
        read.says |= wordSays(std::string_view(folded).substr(i, end - i));
        i = end + 1;
    }
    if (read.unit.of == Of::other) read.says |= bits(Says::other);
    return read;
}

} // namespace stillwire
