// SPDX-License-Identifier: GPL-3.0-or-later
// The aim to steer by while the sensor is turned: how far and which way in what the meter shows, where the other ends
// would come to lie, and how many part-turns that is.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/look.hpp"
#include "app/window/wire/band.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

#include <QWidget>

namespace stillwire {

// Where another position would be read, were it visited now. Volts shown.
struct OtherEnd {
    QString name;
    double predicted_V = 0;
    Window window_V;
    [[nodiscard]] bool inside() const { return window_V.contains(predicted_V); }
};

struct AimFigures {
    double aim_V = 0, within_V = 0, now_V = 0; // shown
    Window window_V;                           // of the position at rest, shown
    std::vector<OtherEnd> others;
    std::optional<double> perTurn_V; // shown, signed, of one part-turn
    [[nodiscard]] double off_V() const { return aim_V - now_V; }
    [[nodiscard]] bool there() const { return std::abs(off_V()) <= within_V; }
};

// Where every position was read before the sensor was turned, shown. A turn makes the old visits void, so they are
// kept here; visits at every position after it replace them.
class LevelsBefore {
public:
    void watch(const Findings& findings);
    [[nodiscard]] std::optional<double> of(const std::string& position) const;
    void reset() { raw_V_.clear(); }

private:
    std::map<std::string, double> raw_V_;
};

// None unless the sensor is being turned and the meter shows a number.
[[nodiscard]] std::optional<AimFigures> aimFigures(const Scene& scene, const LevelsBefore& before);
[[nodiscard]] QString aimSays(const AimFigures& figures);     // "Up by 0.153 V", "On the aim: stop, tighten"
[[nodiscard]] QString perTurnSays(const AimFigures& figures); // empty until learned
[[nodiscard]] QString turnsSay(const AimFigures& figures);    // how many more; empty until learned, and on the aim
[[nodiscard]] QString otherEndSays(const OtherEnd& end, int decimals = 2);

class AimView : public QWidget {
    Q_OBJECT
public:
    explicit AimView(const Look& look, QWidget* parent = nullptr);
    void begin() { before_.reset(); } // another session
    void show(const Scene& scene);    // hides itself when there is no aim
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintScale(QPainter& painter, const QRectF& box);

    const Look& look_;
    LevelsBefore before_;
    std::optional<AimFigures> figures_;
};

} // namespace stillwire
