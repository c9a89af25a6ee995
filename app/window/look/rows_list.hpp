// SPDX-License-Identifier: GPL-3.0-or-later
// Lists as the bench has them.
#pragma once

#include <QListView>

namespace stillwire {

// The keyboard comes to a row and not to a list: it is seen which, and Enter takes it at once.
class RowsList : public QListView {
    Q_OBJECT
public:
    using QListView::QListView;

protected:
    void focusInEvent(QFocusEvent* event) override {
        QListView::focusInEvent(event);
        if (selectionModel()->hasSelection() || model()->rowCount() == 0) return;
        const QModelIndex now = currentIndex().isValid() ? currentIndex() : model()->index(0, 0);
        selectionModel()->setCurrentIndex(now, QItemSelectionModel::ClearAndSelect);
    }
};

// Whole rows only: what would stand cut at its foot is left for the scroll bar.
class WholeRows : public RowsList {
    Q_OBJECT
public:
    explicit WholeRows(QWidget* parent = nullptr) : RowsList(parent) {
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
