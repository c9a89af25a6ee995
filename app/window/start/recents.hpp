// SPDX-License-Identifier: GPL-3.0-or-later
// Captures opened or made lately, each as a small picture with its verdict.
#pragma once

#include "app/window/look/look.hpp"
#include "core/findings/findings.hpp"
#include "core/trace/trace.hpp"

#include <optional>
#include <vector>

#include <QAbstractListModel>
#include <QStyledItemDelegate>

class QListView;

namespace stillwire {

// What a glance at a capture shows.
struct Glance {
    QString path, name, verdict, trouble; // trouble: why it cannot be read, with the mend
    std::vector<TraceExtremes> slices;    // of the whole capture; empty: not looked at yet
    double high_V = 5.25;
    std::optional<Decision> decision{}; // none: there is no verdict
};

class RecentsModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;
    void setPaths(const QStringList& paths); // newest first
    void setGlance(const Glance& glance);    // of a path that is listed
    [[nodiscard]] const std::vector<Glance>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<Glance> rows_;
};

class RecentsDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    RecentsDelegate(const Look& look, const RecentsModel& model, QObject* parent)
        : QStyledItemDelegate(parent), look_(look), model_(model) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const Look& look_;
    const RecentsModel& model_;
};

// The list that shows them, in one row that scrolls sideways.
[[nodiscard]] QListView* makeRecentsList(const Look& look, RecentsModel& model, QWidget* parent);

} // namespace stillwire
