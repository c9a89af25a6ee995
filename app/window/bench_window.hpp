// SPDX-License-Identifier: GPL-3.0-or-later
// The window: start page, bench, page of keys; the keys; what is remembered from one day to the next.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/keys.hpp"
#include "app/window/look/look.hpp"
#include "app/window/settings/desktop.hpp"
#include "app/window/settings/settings.hpp"
#include "app/window/sound/sounds.hpp"
#include "app/window/start/doors.hpp"
#include "app/window/start/glance.hpp"
#include "app/window/start/opener.hpp"

#include <functional>
#include <optional>

#include <QWidget>

class QShortcut;
class QStackedLayout;

namespace stillwire {

class AskView;
class BenchPage;
class KeysPage;
class SettingsPage;
class StartPage;

class BenchWindow : public QWidget {
    Q_OBJECT
public:
    explicit BenchWindow(std::unique_ptr<Doors> doors, QWidget* parent = nullptr);
    ~BenchWindow() override;

    void open(const Way& way);
    void attach(Opened opened, bool guided); // shows a session that somebody else started
    void leaveBench();                       // ends the session and goes back to the start page
    void press(KeyAction action);
    void setDemos(const QStringList& paths) { demos_ = paths; } // captures shown after the recent ones
    void restoreHabits(); // where the window stood; and what the desktop wishes, where it is followed
    [[nodiscard]] bool guided() const { return guided_; } // what is on the bench, or was last
    [[nodiscard]] std::optional<Opened> handOver();       // what is on the bench, for another window to show on

    [[nodiscard]] Look& look() { return look_; }
    [[nodiscard]] Settings& settings() { return settings_; }
    [[nodiscard]] Feed& feed() { return feed_; }
    [[nodiscard]] StartPage& start() { return *start_; }
    [[nodiscard]] BenchPage& bench() { return *bench_; }
    [[nodiscard]] QWidget* page() const;
    [[nodiscard]] const Opener& opener() const { return opener_; }
    [[nodiscard]] AskView& question() { return *ask_; }

signals:
    void languageChosen(const QString& code); // whoever owns the window makes it anew in that language

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void buildKeys();
    void restyle();
    void turnTo(QWidget* page);
    void lookAside(QWidget* page); // at the keys or the settings, and back
    void followSettings();
    void askForFile();
    void leaveAsked();
    // The one way to end what is on the bench: asks if anything is at stake, and only then goes on.
    void whenMayEnd(const QString& question, std::function<void()> then);
    void followQuestion(const Scene& scene);
    void enableKeys();
    void showTrouble(const QString& trouble);
    void arrive(Result<Opened>& opened, const Way& way);
    void follow(const Scene& scene);
    void sayForAWhile(const QString& notice, int for_ms);
    void saveElsewhere();
    [[nodiscard]] QString savedAs() const; // the place and name that are proposed
    void sayWhatIsWanted();
    void showFolder();
    void strike();
    void refreshStart();

    std::unique_ptr<Doors> doors_;
    Settings settings_;
    Desktop desktop_;
    Look look_;
    Feed feed_;
    GlanceTaker glances_;
    Sounds sounds_{settings_};
    Opener opener_;
    Opened shown_;    // what is on the bench; its session is the feed's
    QString onBench_; // the capture that is replayed or recorded
    QString savingTo_;
    QStringList demos_;
    QStackedLayout* pages_;
    StartPage* start_;
    BenchPage* bench_;
    KeysPage* keys_;
    SettingsPage* settingsPage_;
    AskView* ask_;
    QWidget* before_ = nullptr; // where the pages of keys and of settings go back to
    std::vector<std::pair<QShortcut*, KeyEntry>> shortcuts_;
    bool painted_ = false, closing_ = false, guided_ = false, stopSeen_ = false;
    int notice_ = 0; // the newest; an older one's end does not take it away
};

} // namespace stillwire
