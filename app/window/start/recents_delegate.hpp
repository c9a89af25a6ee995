// SPDX-License-Identifier: GPL-3.0-or-later
// How a recent capture looks in its row.
#pragma once

#include "app/window/look/look.hpp"

#include <QStyledItemDelegate>

namespace stillwire {

class RecentsModel;

class RecentsDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    RecentsDelegate(const Look& look, const RecentsModel& model, QObject* parent)
        : QStyledItemDelegate(parent), look_(look), model_(model) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    // At a row's end: where a click offers more than to open it.
    [[nodiscard]] static QRect moreArea(const Look& look, const QRect& row);

private:
    const Look& look_;
    const RecentsModel& model_;
};

} // namespace stillwire
