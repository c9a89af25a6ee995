// SPDX-License-Identifier: GPL-3.0-or-later
// "Which meter is it?": looks on every port while it says what it does, and offers what fits. Esc stops, and closes
// once nothing runs.
#pragma once

#include "app/window/look/look.hpp"
#include "app/window/start/doors.hpp"

#include <thread>
#include <vector>

#include <QDialog>

class QListWidget;
class QPushButton;

namespace stillwire {

class ProgressLine;
class TextLabel;

class FindMeterBox : public QDialog {
    Q_OBJECT
public:
    FindMeterBox(const Look& look, Doors& doors, QWidget* parent = nullptr);
    ~FindMeterBox() override { halt(); }

    void search(); // (again)
    void reject() override;

signals:
    void chosen(const QString& port, const QString& meter); // a port's name, a description's

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void halt(); // and waits; a search heeds a stop within a tenth of a second
    void progress(const FindProgress& progress);
    void finished(std::vector<PortFinding> found);
    void accept() override;
    void nameClose(const QString& words);
    void restyle();
    [[nodiscard]] const PortFinding* current() const;

    const Look& look_;
    Doors& doors_;
    TextLabel *title_, *says_;
    ProgressLine* line_;
    QListWidget* list_;
    QPushButton *use_, *again_, *close_;
    std::vector<PortFinding> found_;
    bool running_ = false;
    std::jthread search_; // last: ends before what it tells
};

} // namespace stillwire
