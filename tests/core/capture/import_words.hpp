// SPDX-License-Identifier: GPL-3.0-or-later
// The import options of the command line out of a line of words, as a truth of the corpus has them.
#pragma once

#include "core/capture/reader.hpp"
#include "core/text/number.hpp"

#include <algorithm>
#include <sstream>
#include <stdexcept>

namespace stillwire {

// "--volts-column Channel_1 --time-as ms": an underscore in a name is a space.
inline ImportOptions importOptions(const std::string& line) {
    ImportOptions options;
    std::istringstream words(line);
    for (std::string word; words >> word;) {
        std::string value;
        if (word == "--decimal-comma" || word == "--decimal-point") {
            options.decimalComma = word == "--decimal-comma";
            continue;
        }
        words >> value;
        std::string name = value;
        std::replace(name.begin(), name.end(), '_', ' ');
        if (word == "--time-column")
            options.timeColumn = name;
        else if (word == "--volts-column")
            options.voltsColumn = name;
        else if (word == "--reference-column")
            options.referenceColumn = name;
        else if (word == "--delimiter")
            options.delimiter = value == "space" ? ' ' : value.at(0);
        else if (word == "--time-as")
            options.timeAs = timeAsNamed(value).value();
        else if (word == "--date-order")
            options.dateOrder = dateOrderNamed(value).value();
        else if (word == "--volts-unit")
            options.voltsExponent = value == "mV" ? -3 : 0;
        else if (word == "--interval")
            options.interval = parseTime(value).value();
        else if (word == "--last-line")
            options.lastLine = std::stoi(value);
        else
            throw std::invalid_argument(word);
    }
    return options;
}

} // namespace stillwire
