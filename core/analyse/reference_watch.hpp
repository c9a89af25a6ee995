// SPDX-License-Identifier: GPL-3.0-or-later
// A second meter on the reference wire: where it held, every time it moved, and whether the signal merely went with
// it. Streaming; memory grows with movements, not readings.
#pragma once

#include "core/explain/classify.hpp"

#include <optional>
#include <vector>

namespace stillwire {

class ReferenceWatch {
public:
    ReferenceWatch(const MeterTraits& meter, double nominal_V); // of the meter on the reference, completed

    void push(const Reading& reading); // one that is a number
    void pause();                      // not watched from here on: gap, key off, leads on their way

    // Movements of the reference, the open one last; one that stayed is told once.
    [[nodiscard]] std::vector<Excursion> movements() const;
    [[nodiscard]] const std::optional<Reading>& newest() const { return newest_; }
    // Is a reading of the reference fresh enough at `now` to go with one of the signal? 2.5 intervals, at least 1 s.
    [[nodiscard]] bool freshAt(Time now) const;

private:
    struct List final : Explained {
        void held(const Reading*, std::size_t, int, const Segment&, bool) override {}
        void away(const Reading&, int, const Segment&) override {}
        void moving(const Reading&, int) override {}
        void excursion(const Excursion& excursion, bool) override { all.push_back(excursion); }
        void moved(const Movement& movement) override;
        std::vector<Excursion> all;
    };

    Search search_;
    Expectation still_; // nobody moves a reference
    Time fresh_;
    List list_;
    Classifier classifier_;
    std::optional<Reading> newest_;
};

// Did the signal go where the reference went? A sensor divides its reference: if that sags to 60 %, so does the
// signal. Two meters look at different moments, and each shows a lower bound of a short dip: shares within a quarter
// of each other for movements of three readings or more, else within a factor of three. Own rule, no source.
// `slack`: how far apart the two meters may show one event.
struct SignalMove {
    Time from{0}, to{0};
    double held_V = 0, extreme_V = 0; // shown
    int readings = 0;
};
[[nodiscard]] bool wentWithReference(const SignalMove& signal, const std::vector<Excursion>& reference, Time slack);

} // namespace stillwire
