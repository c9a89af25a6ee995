// SPDX-License-Identifier: GPL-3.0-or-later
// The trace over the band under test, with phases, machine strip and rail on one time axis. Keys and mouse move it in
// time.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/wire/time_window.hpp"
#include "app/window/wire/trace_painter.hpp"

#include <QWidget>

namespace stillwire {

class TraceView : public QWidget {
    Q_OBJECT
public:
    explicit TraceView(const Look& look, QWidget* parent = nullptr);

    void show(const Scene& scene);
    void reset(double length_s = 0); // another session: follow its end again; its length, if it is known
    [[nodiscard]] TimeWindow& time() { return time_; }
    void lookAt(double time_s); // and mark the place
    void zoom(double factor);
    void scroll(double spans);
    void followEnd();
    void showAll();
    bool layWarmOverCold(); // and takes it off again; false: there is no warm wiggle to lay
    [[nodiscard]] const Band& band() const { return band_; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] TracePicture picture() const;
    struct Frame { // in which the trace stands
        VoltAxis volts;
        TimeAxis time;
        QRectF bandLabel;
        friend bool operator==(const Frame&, const Frame&) = default;
    };
    [[nodiscard]] Frame frame() const;
    void updateEnd(const Scene& before);
    void moved();

    const Look& look_;
    Scene scene_;
    Band band_;
    TimeWindow time_;
    std::optional<double> selected_s_;
    std::optional<double> warmAfter_s_; // laid over: the warm wiggle began this long after the cold one
    Frame frame_;
    double painted_s_ = 0; // the session's time that is on show
    double draggedFrom_ = 0;
    bool ringed_ = false; // the keyboard came here by Tab
};

} // namespace stillwire
