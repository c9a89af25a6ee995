// SPDX-License-Identifier: GPL-3.0-or-later
// The start page: a meter on a port, the simulated meter, or a capture; which sheet; and what went wrong, in place.
#pragma once

#include "app/window/start/doors.hpp"
#include "app/window/start/recents.hpp"

#include <QWidget>

class QComboBox;
class QFrame;
class QListView;
class QPushButton;
class QSpacerItem;
class QVBoxLayout;

namespace stillwire {

class DrawingView;
class StartIntro;
class StartNews;
class StartPanel;
class TextLabel;

class StartPage : public QWidget {
    Q_OBJECT
public:
    StartPage(const Look& look, Doors& doors, QWidget* parent = nullptr);

    void refresh();                          // ports, meters, sheets and scenarios anew; what was chosen stays
    void remember();                         // the choices, in QSettings
    void setTrouble(const QString& trouble); // one sentence with its mend; empty takes it away
    void setBusy(const QString& says, double share = 0); // what is being opened, how much of it; empty: nothing
    void setCutShort(const QStringList& paths);          // runs that nobody ended, the newest last
    void setRecents(const QStringList& paths) { recents_.setPaths(paths); }
    [[nodiscard]] RecentsModel& recents() { return recents_; }
    [[nodiscard]] Way portWay() const;
    [[nodiscard]] Way simulatedWay() const;
    [[nodiscard]] Way captureWay(const QString& path) const;

signals:
    void chosen(const stillwire::Way& way);
    void openAsked();
    void putAside(const QString& path); // a run that was cut short
    void givenUp();
    void languageChosen(const QString& code);

protected:
    void paintEvent(QPaintEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    void buildRight();
    void buildCaptures();
    StartPanel* panel(const QString& title, const QString& text, bool whole = true);
    QComboBox* box(const char* setting, const QString& name);
    QComboBox* choice(const char* setting, const QString& name, StartPanel* panel, int column);
    void buildReference(StartPanel* port);
    void fillReference(const std::vector<Listed>& ports, const std::vector<Listed>& meters);
    QPushButton* button(const QString& words);
    void fill(QComboBox* box, const std::vector<Listed>& items, const QString& none);
    void findMeter();
    void restyle();

    const Look& look_;
    Doors& doors_;
    RecentsModel recents_;
    StartIntro* left_;
    QWidget* right_;
    StartNews* news_;
    bool greeted_ = false;
    TextLabel *portSays_, *recentsSays_;
    QVBoxLayout* recentsPlace_;
    QComboBox *sheet_, *port_, *meter_, *scenario_, *speed_, *replaySpeed_;
    QComboBox *referencePort_, *referenceMeter_; // of a second meter
    QPushButton *startPort_, *startSimulated_, *open_, *find_;
    QListView* recentList_;
    std::vector<StartPanel*> panels_;
    std::vector<QSpacerItem*> gaps_; // one above each panel
};

} // namespace stillwire
