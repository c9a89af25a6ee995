// SPDX-License-Identifier: GPL-3.0-or-later
// Findings and phases for item views. Rows that stay the same are left alone, so a selection survives a live session.
#pragma once

#include "app/window/verdict/findings_rows.hpp"

#include <QAbstractListModel>

namespace stillwire {

enum ItemRole { ShapeRole = Qt::UserRole + 1, ColourRole, DetailRole, TimeRole };

class FindingsModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;
    void setRows(std::vector<FindingRow> rows);
    [[nodiscard]] const std::vector<FindingRow>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<FindingRow> rows_;
};

// One phase a row; display text "wiggle  1:02 to 1:40", TimeRole its start in seconds.
class PhasesModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;
    void setPhases(const std::vector<Phase>& phases);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<Phase> phases_;
};

} // namespace stillwire
