// SPDX-License-Identifier: GPL-3.0-or-later
// The start page: a meter on a port and the sensor's sheet, the simulated meter, or a capture; and what went wrong,
// in place.
#pragma once

#include "app/window/start/doors.hpp"
#include "app/window/start/recents.hpp"

#include <QWidget>

class QComboBox;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace stillwire {

class ChoiceBox;
class RecentsList;
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
    void settingsAsked();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    void buildRight();
    void buildPort();
    void buildSimulated();
    void buildCaptures();
    StartPanel* panel(const QString& title, const QString& text);
    ChoiceBox* choice(const char* setting, const QString& name);
    QPushButton* button(const QString& words, const QString& name);
    void fillReference(const std::vector<Listed>& ports, const std::vector<Listed>& meters);
    void fill(QComboBox* box, const std::vector<Listed>& items, const QString& none);
    void findMeter();
    void restyle();

    const Look& look_;
    Doors& doors_;
    RecentsModel recents_;
    StartIntro* left_;
    QScrollArea* scroll_; // in a low window the captures are scrolled to
    QWidget* right_;
    QVBoxLayout* column_;
    StartNews* news_;
    bool greeted_ = false;
    TextLabel *portSays_, *recentsSays_;
    ChoiceBox *sheet_, *port_, *meter_, *scenario_, *speed_, *replaySpeed_;
    ChoiceBox *referencePort_, *referenceMeter_; // of a second meter
    QPushButton *startPort_, *startSimulated_, *open_, *find_;
    RecentsList* recentList_;
    std::vector<StartPanel*> panels_;
};

} // namespace stillwire
