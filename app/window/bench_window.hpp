// SPDX-License-Identifier: GPL-3.0-or-later
// The window: start page, bench, page of keys; the keys; what is remembered from one day to the next.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/keys.hpp"
#include "app/window/look/look.hpp"
#include "app/window/sound/sounds.hpp"
#include "app/window/start/doors.hpp"
#include "app/window/start/glance.hpp"
#include "app/window/start/opener.hpp"

#include <QWidget>

class QShortcut;
class QStackedLayout;

namespace stillwire {

class BenchPage;
class KeysPage;
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
    void restoreHabits();                                       // geometry, theme and sounds, from QSettings
    void restoreSession();                                      // what was on the bench when the window was closed

    [[nodiscard]] Look& look() { return look_; }
    [[nodiscard]] Feed& feed() { return feed_; }
    [[nodiscard]] StartPage& start() { return *start_; }
    [[nodiscard]] BenchPage& bench() { return *bench_; }
    [[nodiscard]] QWidget* page() const;
    [[nodiscard]] const Opener& opener() const { return opener_; }

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
    void askForFile();
    void leaveAsked();
    void arrive(Result<Opened>& opened, const Way& way);
    void follow(const Scene& scene);
    void sayForAWhile(const QString& notice);
    void saveElsewhere();
    void strike();
    void refreshStart();

    std::unique_ptr<Doors> doors_;
    Look look_;
    Feed feed_;
    GlanceTaker glances_;
    Sounds sounds_;
    Opener opener_;
    std::function<void()> strike_; // of the simulated meter on the bench
    QString onBench_;              // the capture that is replayed or recorded
    QString savingTo_;
    QStringList demos_;
    QStackedLayout* pages_;
    StartPage* start_;
    BenchPage* bench_;
    KeysPage* keys_;
    QWidget* before_ = nullptr; // where the page of keys goes back to
    std::vector<std::pair<QShortcut*, KeyGroup>> shortcuts_;
    bool shown_ = false, leaving_ = false, closing_ = false;
};

} // namespace stillwire
