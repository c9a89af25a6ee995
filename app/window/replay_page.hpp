// SPDX-License-Identifier: GPL-3.0-or-later
// The left page of a session that nobody leads: what it is, and its findings and phases to jump to.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/verdict/models.hpp"

#include <QWidget>

class QAbstractItemModel;

namespace stillwire {

class TextLabel;
class VerdictDetails;
class ProgressLine;
class WholeRows;

class ReplayPage : public QWidget {
    Q_OBJECT
public:
    explicit ReplayPage(const Look& look, QWidget* parent = nullptr);
    void begin(const QString& name, const QString& notes);
    void show(const Scene& scene);
    void hideVerdict(bool hidden);
    void setLength(double length_s) { length_s_ = length_s; } // of the whole capture, while it is being judged
    void step(int rows);                                      // to the next finding, or with -1 the one before

signals:
    void lookAt(double time_s);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fitLists();
    WholeRows* makeList(QAbstractItemModel* model, const QString& name);

    const Look& look_;
    VerdictDetails* details_;
    ProgressLine* judged_; // how far, while a long capture is read
    double length_s_ = 0;
    FindingsModel events_;
    PhasesModel phases_;
    TextLabel *title_, *notes_, *summary_, *eventsTitle_, *phasesTitle_;
    WholeRows *eventList_ = nullptr, *phaseList_ = nullptr;
};

} // namespace stillwire
