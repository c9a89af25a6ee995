// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/whole_seconds.hpp"

#include "core/capture/row_parser.hpp"

#include <algorithm>
#include <type_traits>
#include <utility>

namespace stillwire {

namespace {

constexpr std::int64_t kSecond_us = 1'000'000;

bool isWhole(Time time) { return time.count() % kSecond_us == 0; }

// A capture of ours has microseconds: fewer readings that show none may have been written by hand.
constexpr int kFewestOfOurs = 10;
// So many readings in one second come from no meter of those that write whole seconds.
constexpr int kFewestThatMove = 100;

struct Looker : RowSink {
    bool whole = true, minutes = true, shared = false, moves = false;
    int count = 0;
    Time last{-1};
    void reading(const Reading& reading) override {
        if (reading.flags.has(Flag::ref)) return; // another meter's
        whole = whole && isWhole(reading.time);
        minutes = minutes && reading.time.count() % (60 * kSecond_us) == 0;
        shared = shared || reading.time == last;
        moves = moves || (count > 0 && reading.time != last);
        last = reading.time;
        ++count;
    }
    void mark(const Mark&) override {}
};

} // namespace

SharedTimes sharedTimes(std::string_view rows, const Prologue& prologue) {
    Looker looker;
    RowParser parser(prologue, {}, looker, nullptr);
    const auto read = parser.consume(rows, false); // what is wrong is said when the rows are read
    if (!read || !looker.shared) return SharedTimes::none;
    if (prologue.layout.imported && !looker.moves && looker.count >= kFewestThatMove) return SharedTimes::all;
    if (prologue.layout.imported && looker.moves && looker.minutes) return SharedTimes::minutes;
    const bool enough = prologue.layout.imported || looker.count >= kFewestOfOurs;
    return looker.whole && enough ? SharedTimes::seconds : SharedTimes::none;
}

void SecondSpreader::reading(const Reading& reading) {
    const std::int64_t at_s = reading.time.count() / kSecond_us;
    const bool full = at_s == open_.at_s && open_.count() == kMost;
    open_.asWritten = open_.asWritten || full;
    if (open_.count() > 0 && (full || at_s != open_.at_s)) close(false);
    open_.at_s = at_s;
    open_.asWritten = open_.asWritten || full || !isWhole(reading.time);
    open_.rows.add(reading);
}

void SecondSpreader::mark(const Mark& mark) {
    if (open_.count() > 0) return open_.rows.add(mark);
    Mark given = mark;
    given.time = inOrder(mark.time);
    to_.mark(given);
}

void SecondSpreader::finish() {
    if (open_.count() > 0) close(true);
}

// What a second meter read at the same time has no place of its own.
std::size_t SecondSpreader::Second::places() const {
    const auto own = std::count_if(rows.readings.begin(), rows.readings.end(),
                                   [](const Reading& r) { return !r.flags.has(Flag::ref); });
    return std::max<std::size_t>(1, static_cast<std::size_t>(own));
}

void SecondSpreader::close(bool last) {
    Second done = std::exchange(open_, {});
    if (perSecond_ == 0 && !last) {
        perSecond_ = done.places();
        first_ = std::move(done);
        return;
    }
    // A second that is left as written does not tell how many a second holds.
    if (first_) {
        const std::size_t held = first_->places();
        if (!done.asWritten) perSecond_ = std::max(held, done.places());
        give(*first_, perSecond_ - held);
        first_.reset();
    }
    if (!done.asWritten) perSecond_ = last ? std::max(perSecond_, done.places()) : done.places();
    if (perSecond_ == 0) perSecond_ = done.places();
    give(done, 0);
}

void SecondSpreader::give(const Second& second, std::size_t skipped) {
    std::int64_t place = static_cast<std::int64_t>(skipped);
    const auto per = static_cast<std::int64_t>(perSecond_);
    const auto within = [&] { return Time((place * kSecond_us + per / 2) / per); };
    if (fromFirst_ && skipped > 0 && !second.asWritten) shift_ = within();
    second.rows.eachRow([&](auto row) {
        if constexpr (std::is_same_v<decltype(row), Mark>) {
            row.time = inOrder(row.time);
            to_.mark(row);
        } else {
            row.time = inOrder(second.asWritten ? row.time : Time(second.at_s * kSecond_us) + within());
            if (!row.flags.has(Flag::ref)) ++place;
            to_.readings(&row, 1);
        }
    });
}

// What counts from the first reading, and never goes back.
Time SecondSpreader::inOrder(Time time) { return last_ = std::max(time - shift_, last_); }

} // namespace stillwire
