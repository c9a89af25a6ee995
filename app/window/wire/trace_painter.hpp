// SPDX-License-Identifier: GPL-3.0-or-later
// Paints one moment of the trace and what stands on its time axis. Knows no widget; a view or a report may use it.
#pragma once

#include "app/window/look/paint.hpp"
#include "app/window/wire/axes.hpp"
#include "app/window/wire/band.hpp"

#include <QRegion>

namespace stillwire {

struct TracePicture {
    const SessionSnapshot* snapshot = nullptr;
    const Sheet* sheet = nullptr;
    Band band;
    TimeAxis time;
    VoltAxis volts;
    QRectF plot, rail, ribbon, machine; // an empty rectangle is left out
    std::optional<double> selected_s;   // a finding looked at
    QRegion wanted;                     // empty: all of it
};

class TracePainter {
public:
    TracePainter(QPainter& painter, const Look& look, const TracePicture& picture);

    void paintPlot();    // ground, band, blind time, trace, events
    void paintOver();    // only the trace, as a broken line: laid over another
    void paintRail();    // the level of now beside the window, on the trace's scale
    void paintRibbon();  // the phases
    void paintMachine(); // what the controller would have done
    void paintTime();    // labels under the lowest strip

    [[nodiscard]] static double labelWidth(const Look& look); // left of the plot, for volts with their sign
    [[nodiscard]] QRectF bandLabelPlace() const;              // where the trace leaves room; empty: there is no band

private:
    void paintBand();
    void paintBandLabel();
    [[nodiscard]] bool wanted(const QRectF& place) const;
    [[nodiscard]] double wantedFrom_x() const; // in the plot
    [[nodiscard]] bool leftFree(const QRectF& place) const;
    void paintBlind(const QRectF& area);
    void paintVoltLabels();
    void paintLine();
    void paintColumns(Time from, Time to);
    void paintEvents();

    QPainter& p_;
    const Look& look_;
    const TracePicture& pic_;
    const Findings& findings_;
    bool over_ = false;
};

// 0 to just over the reference, wider if the trace is; close about the window while a wire or an adjustment is on.
[[nodiscard]] VoltAxis voltAxisFor(const SessionSnapshot& snapshot, const Sheet* sheet, const Band& band,
                                   const TimeAxis& time);

} // namespace stillwire
