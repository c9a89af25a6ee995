// SPDX-License-Identifier: GPL-3.0-or-later
// Captures opened or made lately, a row each: its picture, what it is called, when and of what, its note, its
// verdict.
#pragma once

#include "app/window/look/look.hpp"
#include "app/window/look/rows_list.hpp"
#include "app/window/start/glance.hpp"

#include <QAbstractListModel>

namespace stillwire {

class RecentsModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;
    void setPaths(const QStringList& paths); // newest first; those without a reading stand last
    void setGlance(const Glance& glance);    // of a path that is listed
    void renamed(const QString& from, const QString& to);
    void remove(const QString& path); // from the list; the file stays
    [[nodiscard]] const std::vector<Glance>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    void emptyOnesLast();

    std::vector<Glance> rows_;
};

// One click opens; the sign at a row's end, the right button and the Menu key offer the rest.
class RecentsList : public RowsList {
    Q_OBJECT
public:
    RecentsList(const Look& look, RecentsModel& model, QWidget* parent);

signals:
    void chosen(const QString& path);
    void troubled(const QString& says);

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] QString pathOf(const QModelIndex& index) const;
    void offer(const QModelIndex& index, const QPoint& at); // at: on the screen
    void rename(const QString& path);
    void note(const QString& path);

    const Look& look_;
    RecentsModel& model_;
};

} // namespace stillwire
