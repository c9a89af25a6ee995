// SPDX-License-Identifier: GPL-3.0-or-later
// How a port and what was found on it stand in a list: the port bold, what is said of it under it, bytes in columns.
#pragma once

#include "app/window/look/look.hpp"

#include <vector>

#include <QStyledItemDelegate>

namespace stillwire {

class FoundDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    static constexpr char16_t kBytes = u'\t'; // begins a line of bytes

    FoundDelegate(const Look& look, QObject* parent) : QStyledItemDelegate(parent), look_(look) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    struct Line {
        QRectF place;
        QString text;
        QFont font;
    };
    [[nodiscard]] std::vector<Line> lines(const QString& text, double width) const; // from (0, 0)

    const Look& look_;
};

} // namespace stillwire
