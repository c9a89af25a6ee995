// SPDX-License-Identifier: GPL-3.0-or-later
// A list that shows whole rows only: what would stand cut at its foot is left for the scroll bar.
#pragma once

#include <QListView>

namespace stillwire {

class WholeRows : public QListView {
    Q_OBJECT
public:
    explicit WholeRows(QWidget* parent = nullptr) : QListView(parent) {
        setUniformItemSizes(true);
        setVerticalScrollMode(QAbstractItemView::ScrollPerItem);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    }
    void fitRows() { // after rows have come or their height has changed
        const int row = sizeHintForRow(0), room = contentsRect().height();
        setViewportMargins(0, 0, 0, row > 0 && room > row ? room % row : 0);
    }

protected:
    void resizeEvent(QResizeEvent* event) override {
        QListView::resizeEvent(event);
        fitRows();
    }
};

} // namespace stillwire
