// SPDX-License-Identifier: GPL-3.0-or-later
// Two pages side by side: left the hand (or what is replayed), right the wire and what it means.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/keys.hpp"
#include "app/window/settings/settings.hpp"
#include "app/window/verdict/models.hpp"

#include <optional>

#include <QElapsedTimer>
#include <QWidget>

class QHBoxLayout;
class QStackedLayout;
class QVBoxLayout;

namespace stillwire {

class AimView;
class Announcer;
class BriefingView;
class CardsView;
class FarView;
class HandPage;
class KeyButton;
class KeyHints;
class PathView;
class ReadoutView;
class ReplayPage;
class StopView;
class TraceView;
class TroubleCard;
class VerdictBar;
class VerdictHead;
class WholeRows;

class BenchPage : public QWidget {
    Q_OBJECT
public:
    BenchPage(const Look& look, const Settings& settings, Feed& feed, QWidget* parent = nullptr);
    void setHandsBusyAfter(int after_ms) { busyAfter_ms_ = after_ms; } // with the mouse at rest

    // `length_s`: of a capture that is read, 0 if not known.
    void begin(const QString& name, const QString& notes, bool guided, double length_s = 0);
    bool handle(KeyAction action);   // true: it was for this page
    void say(const QString& notice); // one line in place; empty takes it away
    [[nodiscard]] TraceView& trace() { return *trace_; }
    [[nodiscard]] ReadoutView& readout() { return *readout_; }
    [[nodiscard]] FarView& far() { return *far_; }

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
    void showFindings(bool room);
    void lookFar(const Scene& scene);

    const Look& look_;
    const Settings& settings_;
    Feed& feed_;
    int busyAfter_ms_ = 6000;
    FindingsModel summary_;
    bool guided_ = true, hidden_ = false; // hidden_: the verdict, for a class
    bool wide_ = false, allFindings_ = false;
    enum class Far { byItself, yes, no } wantFar_ = Far::byItself; // yes or no: by the key; no: for this step
    std::optional<Step> farStep_;
    QPoint mouse_;
    QElapsedTimer untouched_; // since the mouse was last moved
    QString roomMadeFor_;     // and in which size; made again only for another
    QSize roomMadeIn_;
    QString notice_;

    QWidget *left_, *right_;
    QVBoxLayout *leftColumn_, *rightColumn_;
    QHBoxLayout* cardsRow_;
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
    WholeRows* all_; // every finding, once it is asked for
    KeyButton* more_;
    Announcer* announcer_;
    VerdictBar* verdict_;
    PathView* path_;
    FarView* far_;
    StopView* stop_;
    TroubleCard* trouble_; // of link and recorder, and notices
};

} // namespace stillwire
