// SPDX-License-Identifier: GPL-3.0-or-later
// Two pages side by side: left the hand (or what is replayed), right the wire and what it means.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/keys.hpp"
#include "app/window/verdict/models.hpp"

#include <QWidget>

class QStackedLayout;
class QVBoxLayout;

namespace stillwire {

class AimView;
class BriefingView;
class CardsView;
class HandPage;
class KeyHints;
class PathView;
class ReadoutView;
class ReplayPage;
class StopView;
class TraceView;
class TroubleCard;
class VerdictBar;
class VerdictHead;

class BenchPage : public QWidget {
    Q_OBJECT
public:
    BenchPage(const Look& look, Feed& feed, QWidget* parent = nullptr);

    // `length_s`: of a capture that is read, 0 if not known.
    void begin(const QString& name, const QString& notes, bool guided, double length_s = 0);
    bool handle(KeyAction action);   // true: it was for this page
    void say(const QString& notice); // one line in place; empty takes it away
    [[nodiscard]] TraceView& trace() { return *trace_; }
    [[nodiscard]] ReadoutView& readout() { return *readout_; }

signals:
    void keyPressed(stillwire::KeyAction action);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildLeft();
    void buildRight();
    void restyle();
    void makeRoom();
    void turnLeft(bool hand); // else what is replayed, or over
    [[nodiscard]] double leftWidth() const;
    void show(const Scene& scene);
    void showLeft(const Scene& scene);
    void showWire(const Scene& scene);
    void hideVerdict();

    const Look& look_;
    Feed& feed_;
    FindingsModel summary_;
    bool guided_ = true, hidden_ = false; // hidden_: the verdict, for a class
    bool wide_ = false;
    QString roomMadeFor_; // and in which size; made again only for another
    QSize roomMadeIn_;
    QString notice_;

    QWidget *left_, *right_;
    QVBoxLayout *leftColumn_, *rightColumn_;
    QStackedLayout* leftStack_;
    HandPage* hand_;
    ReplayPage* replay_;
    KeyHints *handHints_, *replayHints_, *turns_;
    ReadoutView* readout_;
    VerdictHead* head_;
    AimView* aim_;
    BriefingView* briefing_;
    TraceView* trace_;
    CardsView* cards_;
    VerdictBar* verdict_;
    PathView* path_;
    StopView* stop_;
    TroubleCard* trouble_; // of link and recorder, and notices
};

} // namespace stillwire
