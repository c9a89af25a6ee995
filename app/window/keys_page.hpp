// SPDX-License-Identifier: GPL-3.0-or-later
// The page that lists every key, made from the one table.
#pragma once

#include "app/window/keys.hpp"
#include "app/window/look/look.hpp"

#include <QWidget>

namespace stillwire {

class KeysPage : public QWidget {
    Q_OBJECT
public:
    explicit KeysPage(const Look& look, QWidget* parent = nullptr);

signals:
    void done();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QWidget* group(KeyGroup group, const QString& title);

    const Look& look_;
    QWidget* list_;
};

} // namespace stillwire
