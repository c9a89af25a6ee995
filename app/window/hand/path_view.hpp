// SPDX-License-Identifier: GPL-3.0-or-later
// The path of steps as text: done with a tick, skipped struck through, the one in hand ringed.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/words.hpp"

#include <set>
#include <vector>

#include <QWidget>

namespace stillwire {

class PathView : public QWidget {
    Q_OBJECT
public:
    explicit PathView(const Look& look, QWidget* parent = nullptr);
    void begin() { path_.clear(); } // another session
    void show(const Scene& scene);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Word {
        QString text;
        StepOutcome outcome = StepOutcome::waiting;
        double width = 0;
        bool unseen = false;
    };
    [[nodiscard]] std::vector<Word> wordsThatFit(double room) const;

    const Look& look_;
    std::vector<PathEntry> path_;
    std::set<Step> unseen_; // done without one reading
};

} // namespace stillwire
