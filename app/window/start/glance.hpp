// SPDX-License-Identifier: GPL-3.0-or-later
// Looks at captures in the background, for their small pictures on the start page.
#pragma once

#include "app/window/start/recents.hpp"

#include <atomic>

#include <QObject>
#include <QThreadPool>

namespace stillwire {

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
