// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/taken.hpp"

#include "core/capture/cell_error.hpp"

namespace stillwire {

namespace {

Sentence delimiterSaid(char delimiter) {
    switch (delimiter) {
    case ',': return Sentence{"commas"};
    case ';': return Sentence{"semicolons"};
    case '\t': return Sentence{"tabs"};
    case '|': return Sentence{"bars"};
    case ' ': return Sentence{"spaces"};
    default: return Sentence{"\"%1\"", {std::string(1, delimiter)}};
    }
}

Sentence timeSaid(TimeAs as) {
    switch (as) {
    case TimeAs::microseconds: return Sentence{"microseconds"};
    case TimeAs::milliseconds: return Sentence{"milliseconds"};
    case TimeAs::seconds: return Sentence{"seconds"};
    case TimeAs::minutes: return Sentence{"minutes"};
    case TimeAs::hours: return Sentence{"hours"};
    case TimeAs::days: return Sentence{"days, as spreadsheets count them"};
    case TimeAs::clockFigures: return Sentence{"a time of day in six figures"};
    case TimeAs::stampFigures: return Sentence{"date and time in figures"};
    case TimeAs::hoursMinutes: return Sentence{"hours and minutes"};
    case TimeAs::minutesSeconds: return Sentence{"minutes and seconds"};
    case TimeAs::written: break;
    }
    return "a clock";
}

Sentence orderSaid(DateOrder order) {
    switch (order) {
    case DateOrder::yearMonthDay: return "In its dates the year comes first.";
    case DateOrder::dayMonthYear: return "In its dates the day comes first.";
    case DateOrder::monthDayYear: break;
    }
    return "In its dates the month comes first.";
}

} // namespace

std::vector<Sentence> takenSays(const ImportTaken& t) {
    std::vector<Sentence> out;
    if (t.columnsLine > 0)
        out.push_back({"Its columns are named on line %1 and lie between %2.",
                       {std::to_string(t.columnsLine), delimiterSaid(t.delimiter)}});
    else
        out.push_back({"Its columns have no names and lie between %1.", {delimiterSaid(t.delimiter)}});
    if (t.timeAs && t.dateColumn.empty())
        out.push_back({"Time: column %1, taken as %2.", {quotedCell(t.timeColumn), timeSaid(*t.timeAs)}});
    else if (t.timeAs)
        out.push_back({"Time: columns %1 and %2, taken as %3.",
                       {quotedCell(t.dateColumn), quotedCell(t.timeColumn), timeSaid(*t.timeAs)}});
    if (t.dateOrder) out.push_back(orderSaid(*t.dateOrder));
    out.push_back({"Signal: column %1, taken as %2.", {quotedCell(t.voltsColumn), t.voltsUnit}});
    if (!t.referenceColumn.empty()) out.push_back({"Reference: column %1.", {quotedCell(t.referenceColumn)}});
    if (t.decimal)
        out.push_back(*t.decimal == DecimalSign::comma ? "Its numbers have a decimal comma."
                                                       : "Its numbers have a decimal point.");
    if (t.withoutNumber > 0)
        out.push_back({"Cells in which the meter showed no number: %1.", {std::to_string(t.withoutNumber)}});
    return out;
}

} // namespace stillwire
