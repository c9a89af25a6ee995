// SPDX-License-Identifier: GPL-3.0-or-later
// A plain generator for the core's tests: levels, dropouts and noise averaged over the aperture of a meter and
// rounded to its counts, with the truth kept. No physics here (that is the fault bench's); what goes in is what must
// come out.
#pragma once

#include "core/domain/mark.hpp"
#include "core/domain/reading.hpp"
#include "core/examination.hpp"

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace stillwire::test {

// xorshift64*, so that a seed means the same everywhere.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 1) {}
    double uniform() {
        state_ ^= state_ >> 12;
        state_ ^= state_ << 25;
        state_ ^= state_ >> 27;
        return static_cast<double>((state_ * 0x2545F4914F6CDD1DULL) >> 11) * 0x1p-53;
    }
    double between(double low, double high) { return low + (high - low) * uniform(); }
    double normal();  // mean 0, sd 1
    double laplace(); // mean 0, scale 1: heavier tails

private:
    std::uint64_t state_;
};

struct MakerMeter {
    double interval_s = 0.33;
    double aperture_s = 0.10;
    double resolution_V = 0.001;
    double noise_V = 0.0005;
    double jitter_s = 0.004;
    double percent = 0.5, counts = 2;
};

struct TrueDropout {
    double from_s = 0, to_s = 0;
    double depth_V = 0;      // signed offset of the true level
    double shownDepth_V = 0; // the largest averaged, noise-free depth in any reading
};

class TraceMaker {
public:
    explicit TraceMaker(MakerMeter meter, std::uint64_t seed = 1) : meter_(meter), dice_(seed) {}

    void mark(const std::string& text);
    void hold(double seconds_s);              // at the present level
    void move(double level_V, double over_s); // a straight movement
    void set(double level_V) { level_V_ = level_V; }
    void drift(double perSecond_V) { drift_V_ = perSecond_V; }
    // During the next hold, `after_s` from now.
    void dropout(double after_s, double duration_s, double depth_V);
    void silence(double seconds_s);            // time goes on, the meter says nothing
    void flagged(double seconds_s, Flag flag); // readings without a number
    void heavyTails(bool on) { heavy_ = on; }
    void ripple(double amplitude_V, double frequency_Hz) {
        ripple_V_ = amplitude_V;
        ripple_Hz_ = frequency_Hz;
    }

    // Parts of a guided run.
    void guidedStart(double reference_V = 5.0, double ground_V = 0.02);
    // From the level at rest: so many full presses, three releases, the end.
    void guidedEnds(double pressed_V, int presses = 1);
    // `poses` held poses; in pose i (from 0) the arm shifts by play and drops out by depth if `every` divides i+1.
    void wiggle(const std::string& step, const std::string& where, int poses, int every = 0, double depth_V = 0,
                double duration_s = 0.5, double play_V = 0);
    void press(const std::string& position, double level_V, double hold_s = 3);

    [[nodiscard]] double now_s() const { return time_s_; }
    [[nodiscard]] double level_V() const { return level_V_; }
    [[nodiscard]] const std::vector<std::variant<Reading, Mark>>& rows() const { return rows_; }
    [[nodiscard]] const std::vector<TrueDropout>& dropouts() const { return dropouts_; }
    [[nodiscard]] MeterTraits traits() const;
    Dice& dice() { return dice_; }

private:
    void advance(double until_s);
    [[nodiscard]] double averaged(double from_s, double to_s) const;
    void reading(double at_s);

    MakerMeter meter_;
    Dice dice_;
    double time_s_ = 0, next_s_ = 0;
    double level_V_ = 0, drift_V_ = 0;
    double moveFrom_V_ = 0, moveTo_V_ = 0, moveStart_s_ = 0, moveEnd_s_ = -1;
    bool heavy_ = false, silent_ = false;
    ReadingFlags flags_;
    double ripple_V_ = 0, ripple_Hz_ = 0;
    std::vector<TrueDropout> dropouts_;
    std::size_t firstLive_ = 0;
    std::vector<std::variant<Reading, Mark>> rows_;
};

// The sheets of the checks: released 4.2 to 4.8 V, pressed 0.9 ± 0.1 V; and a pedal that rises.
[[nodiscard]] Sheet fallingSheet();
[[nodiscard]] Sheet risingSheet();

[[nodiscard]] Findings examine(const TraceMaker& trace, const Sheet& sheet,
                               BlackLead black = BlackLead::batteryNegative);
[[nodiscard]] Findings examine(const std::vector<std::variant<Reading, Mark>>& rows, const Sheet& sheet,
                               const MeterTraits& meter, BlackLead black = BlackLead::batteryNegative);

[[nodiscard]] Findings examine(const std::vector<std::variant<Reading, Mark>>& rows, ExaminationSetup setup);

[[nodiscard]] int dropoutCount(const Findings& findings);

} // namespace stillwire::test
