// SPDX-License-Identifier: GPL-3.0-or-later
// The rig: sensor, wiring and meter under a hand, in continuous time. Between events every quantity moves in a
// straight line and the capacitor along an exponential, so an aperture's mean is exact, not sampled. Deterministic;
// not thread-safe.
#pragma once

#include "core/domain/reading.hpp"
#include "core/sheet/meter_traits.hpp"
#include "meters/bench/circuit.hpp"
#include "meters/bench/meter_model.hpp"
#include "meters/bench/path.hpp"
#include "meters/bench/random.hpp"
#include "meters/bench/setup.hpp"
#include "meters/bench/truth.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace stillwire::bench {

class Rig {
public:
    // `levels_V`: of each position in the order of travel, nominal; two or more. `rest`: where the spring pulls to.
    Rig(const BenchSetup& setup, const std::vector<double>& levels_V, std::size_t rest, const MeterTraits& meter,
        std::uint64_t seed);

    [[nodiscard]] double now_s() const { return now_s_; }
    // Appends the readings whose frames were complete by then; time never goes back.
    void advanceTo(double t_s, std::vector<Reading>& out);

    // What a hand can do, all at now_s().
    void key(bool on);
    void probe(Wire wire);
    void push(double travel, double length_s); // travel: 0 the first position, 1 the second, …; eased
    void drag(double travel, double length_s); // the same at an even pace, for the sweep
    void letGo();                              // the spring takes it back to rest, or hangs
    void settleArm();                          // lifted onto its stop
    void leanOn(double side);                  // side load on the shaft: -1 left to +1 right, 0 off
    void holdArm(bool held);                   // it no longer leans with the pushes, unless its bushing is loose
    void holdConnector(bool held);             // it no longer moves with the shaft
    void flex(int section, double side);       // harness; 0 off
    void turn(double partTurns);
    void strike(); // a short dropout of the signal, made for whoever watches
    void context(const std::string& step, const std::string& pose); // for truth

    [[nodiscard]] double nextArrival_s() const; // of the next frame's last byte
    [[nodiscard]] Wire probed() const { return wire_; }
    [[nodiscard]] bool hanging() const { return hanging_; }
    [[nodiscard]] bool hangsInSensor() const { return setup_.mechanics.hangInSensor; }
    [[nodiscard]] double perTurn_V() const { return setup_.mechanics.perTurn_V; }
    [[nodiscard]] double travel() const { return pedal_.target(); }      // of the pedal, when it has come to rest
    [[nodiscard]] double shaftTravel() const { return shaft_.target(); } // of the sensor, behind the lost motion
    // Level a perfect meter and formula would give at `travel` now, without intermittent faults, nominal.
    [[nodiscard]] double trueLevel_V(double travel) const;
    [[nodiscard]] double settled_V(Wire wire) const; // as read, noise-free, at rest, faults closed
    [[nodiscard]] const std::vector<TruthEvent>& events() const { return events_; }
    [[nodiscard]] const MeterModel& meter() const { return meter_; }
    [[nodiscard]] std::size_t readings() const { return readings_; }
    [[nodiscard]] double cold() const; // 1 cold, towards 0 warm

private:
    struct FaultState {
        bool open = false;
        double ohm = 0;
        double next_s = kNever_s;
        std::size_t event = 0;
    };

    [[nodiscard]] double shareAt(double travel) const; // electrical place of a travel, side load and tremor aside
    [[nodiscard]] double shareNow(double t_s) const;
    [[nodiscard]] CircuitValues values(double share, double t_s, bool withFaults) const;
    [[nodiscard]] double healthyContact_ohm(double share) const;
    [[nodiscard]] double rate_per_s(const Intermittent& fault) const;
    void moved();      // the pedal has a new path: the shaft follows, activity changes
    void drawFaults(); // new transition times: rates changed
    void toggle(std::size_t fault);
    void refresh();            // circuit states of now
    void stretch(double to_s); // integrate now_s_ .. to_s
    [[nodiscard]] double nextEvent_s() const;
    [[nodiscard]] double stepLimit_s(double to_s) const;
    void happen(); // what is due at now_s_
    void finishLook();
    void nextTremor();

    BenchSetup setup_;
    std::vector<double> level_V_;
    std::size_t rest_;
    std::uint64_t placeSeed_;
    Random chance_, hand_;
    MeterModel meter_;
    Path pedal_, shaft_, side_, tremor_, wander_;
    std::vector<FaultState> faults_; // the last is nobody's but strike()'s
    std::vector<TruthEvent> events_;
    std::vector<std::size_t> inLook_; // events that reached the aperture under way

    double now_s_ = 0;
    bool keyOn_ = false;
    double keyOn_s_ = 0;
    Wire wire_ = Wire::none;
    double mount_V_;
    bool held_ = false; // a hand is on the pedal
    bool hanging_ = false;
    double leaning_ = 0, flexing_ = 0;
    int section_ = 0;
    bool connectorHeld_ = false, armHeld_ = false;
    double busyUntil_s_ = 0; // the burst of a new pose
    bool travelling_ = false;
    double wipes_ = 0;
    double slowTick_s_ = 0;
    std::string step_, pose_;

    CircuitState state_, clean_;
    double capacitor_V_ = 0, cleanCapacitor_V_ = 0;
    bool diverged_ = false;
    bool looking_ = false;
    double sum_Vs_ = 0, cleanSum_Vs_ = 0;
    std::optional<Reading> onTheWire_;
    std::size_t readings_ = 0;
};

} // namespace stillwire::bench
