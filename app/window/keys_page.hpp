// SPDX-License-Identifier: GPL-3.0-or-later
// The page that lists every key, made from the one table.
#pragma once

#include "app/window/keys.hpp"
#include "app/window/look/look.hpp"

#include <vector>

#include <QWidget>

namespace stillwire {

class KeysPage : public QWidget {
    Q_OBJECT
public:
    explicit KeysPage(const Look& look, QWidget* parent = nullptr);
    void showFor(bool bench); // where the page was opened: on the bench, or not

signals:
    void done();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QWidget* group(KeyGroup group, const QString& title);

    const Look& look_;
    QWidget* list_;
    std::vector<QWidget*> onBench_; // groups that work there alone
};

} // namespace stillwire
