// SPDX-License-Identifier: GPL-3.0-or-later
// Asks the session for its newest snapshot and tells the views when it differs. The only clock of the window.
#pragma once

#include "core/sheet/sheet.hpp"
#include "meters/session/session.hpp"

#include <memory>

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace stillwire {

using SnapshotPtr = std::shared_ptr<const SessionSnapshot>;

// What a view draws from: never changes once handed out.
struct Scene {
    SnapshotPtr snapshot;               // never null
    std::shared_ptr<const Sheet> sheet; // null: none known
};

class Feed : public QObject {
    Q_OBJECT
public:
    explicit Feed(QObject* parent = nullptr);
    ~Feed() override;

    void attach(std::unique_ptr<Session> session, std::shared_ptr<const Sheet> sheet);
    std::unique_ptr<Session> detach();
    [[nodiscard]] Session* session() const { return session_.get(); }
    [[nodiscard]] const Scene& scene() const { return scene_; }
    // The session's time of this moment: the snapshot's, and what has passed since it came.
    [[nodiscard]] double nowSeconds() const;
    void poll();

signals:
    void changed(const stillwire::Scene& scene);

private:
    std::unique_ptr<Session> session_;
    Scene scene_;
    QTimer timer_;
    QElapsedTimer since_;
};

} // namespace stillwire
