// SPDX-License-Identifier: GPL-3.0-or-later
// A finding or a phase in a list: its shape, a title, a line of detail.
#pragma once

#include "app/window/verdict/models.hpp"

#include <QStyledItemDelegate>

namespace stillwire {

class RowDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit RowDelegate(const Look& look, QObject* parent = nullptr) : QStyledItemDelegate(parent), look_(look) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const Look& look_;
};

} // namespace stillwire
