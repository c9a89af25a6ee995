// SPDX-License-Identifier: GPL-3.0-or-later
// Many runs of one row, counted.
#pragma once

#include "tests/hands/judged.hpp"

#include <array>
#include <string>
#include <vector>

namespace stillwire::hands {

struct Told { // one run that is listed
    Request request;
    Judged judged;
    std::string meter, machine;
    std::string acts;
};

struct Row {
    std::string name;
    int runs = 0, right = 0;
    int rightAfter = 0;               // once what was asked for again is in the capture
    int unnamed = 0;                  // of those that cannot tell: no step that would help
    std::array<int, 7> by{}, after{}; // Decision
    std::vector<Told> wrong;          // by seed
    std::vector<Told> cannotTell;

    void add(const Row& other); // but for the name
};

struct RowOrder {
    Request request; // with the first seed
    int seeds = 20;
    int jobs = 1;
    std::string dumpTo; // a folder; empty: none
};

[[nodiscard]] Row runRow(const RowOrder& order, const std::string& name);
[[nodiscard]] std::string tableHead();
[[nodiscard]] std::string tableRow(const Row& row);
[[nodiscard]] std::string line(const Told& told);

} // namespace stillwire::hands
