// SPDX-License-Identifier: GPL-3.0-or-later
// Which act happens at which of its occasions. A run without orders counts the occasions; a second one of the same
// seed then does what was ordered at one of them.
#pragma once

#include "tests/hands/kinds.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace stillwire::hands {

struct Act { // what was done, as truth
    Kind kind = Kind::slip;
    std::string step;
    double from_s = 0, to_s = 0;
    double depth_V = 0; // signed, nominal; 0: no movement
};

struct Order {
    Kind kind = Kind::slip;
    std::string step;
    int occasion = 0; // counts within kind and step, from 0
};

using Occasions = std::map<std::pair<Kind, std::string>, int>;

class Orders {
public:
    Orders() = default;
    explicit Orders(std::vector<Order> orders) : orders_(std::move(orders)) {}

    // True once for each order.
    [[nodiscard]] bool comes(Kind kind, const std::string& step) {
        const int now = seen_[{kind, step}]++;
        for (const Order& o : orders_)
            if (o.kind == kind && o.step == step && o.occasion == now) return true;
        return false;
    }
    [[nodiscard]] const Occasions& occasions() const { return seen_; }

private:
    std::vector<Order> orders_;
    Occasions seen_;
};

} // namespace stillwire::hands
