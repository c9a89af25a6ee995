// SPDX-License-Identifier: GPL-3.0-or-later
// Tells whoever cannot see the bench what changes on it, as it changes: the prompt, the state of the wire, a dropout,
// the verdict. One alert each, by the accessibility interface.
#pragma once

#include "app/window/feed.hpp"

#include <QWidget>

namespace stillwire {

class Announcer : public QObject {
    Q_OBJECT
public:
    explicit Announcer(QWidget& speaks); // whose accessible name becomes what was said last
    void begin();                        // another session
    void hear(const Scene& scene, bool verdictHidden);

signals:
    void told(const QString& words);

private:
    void tell(const QString& words);

    QWidget& speaks_;
    QString prompt_, state_, verdict_;
    std::size_t dropouts_ = 0;
};

} // namespace stillwire
