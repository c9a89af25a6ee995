// SPDX-License-Identifier: GPL-3.0-or-later
// Looks at captures in the background, for their small pictures on the start page.
#pragma once

#include "core/findings/findings.hpp"
#include "core/trace/trace.hpp"

#include <atomic>
#include <optional>
#include <vector>

#include <QObject>
#include <QThreadPool>

namespace stillwire {

// What a glance at a capture shows.
struct Glance {
    QString path, name, verdict, trouble; // trouble: why it cannot be read, with the mend
    QString when, machine, note;          // by the clock of the place it was made at; its sheet's name
    std::vector<TraceExtremes> slices;    // of the whole capture; empty: not looked at yet
    double high_V = 5.25;
    std::optional<Decision> decision{}; // none: there is no verdict
    bool empty = false;                 // not one reading
};

// Reads and judges the capture; any thread. Its sheet, or none: then there is a picture and no verdict.
[[nodiscard]] Glance glanceAt(const QString& path);

class GlanceTaker : public QObject {
    Q_OBJECT
public:
    explicit GlanceTaker(QObject* parent = nullptr);
    ~GlanceTaker() override;             // waits for the one under way
    void take(const QStringList& paths); // those not taken yet

signals:
    void taken(const stillwire::Glance& glance);

private:
    QThreadPool pool_;
    QStringList asked_;
    std::atomic<bool> stop_ = false;
};

} // namespace stillwire
