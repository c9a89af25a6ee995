// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/models.hpp"

#include "app/window/words.hpp"

#include <algorithm>

namespace stillwire {
namespace {

QString clockText(Time at) {
    const int whole = static_cast<int>(toSeconds(at));
    return QStringLiteral("%1:%2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

bool samePhase(const Phase& a, const Phase& b) {
    return a.kind == b.kind && a.from == b.from && a.to == b.to && a.level_V == b.level_V && a.noise_V == b.noise_V;
}

} // namespace

void FindingsModel::setRows(std::vector<FindingRow> rows) {
    const int before = static_cast<int>(rows_.size()), after = static_cast<int>(rows.size());
    if (after < before) {
        beginRemoveRows({}, after, before - 1);
        rows_.resize(rows.size());
        endRemoveRows();
    }
    const int shared = std::min(before, after);
    for (int i = 0; i < shared; ++i) {
        auto& mine = rows_[static_cast<std::size_t>(i)];
        auto& fresh = rows[static_cast<std::size_t>(i)];
        if (mine == fresh) continue;
        mine = fresh;
        emit dataChanged(index(i), index(i));
    }
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        rows_ = std::move(rows);
        endInsertRows();
    }
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const FindingRow& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole: return row.title;
    case Qt::AccessibleTextRole: return QStringLiteral("%1, %2").arg(row.title, row.detail);
    case DetailRole: return row.detail;
    case ShapeRole: return static_cast<int>(row.shape);
    case ColourRole: return static_cast<int>(row.colour);
    case TimeRole: return row.at_s ? QVariant(*row.at_s) : QVariant();
    default: return {};
    }
}

void PhasesModel::setPhases(const std::vector<Phase>& phases) {
    const int before = static_cast<int>(phases_.size()), after = static_cast<int>(phases.size());
    if (after < before) {
        beginRemoveRows({}, after, before - 1);
        phases_.resize(phases.size());
        endRemoveRows();
    }
    for (int i = 0; i < std::min(before, after); ++i) {
        auto& mine = phases_[static_cast<std::size_t>(i)];
        if (samePhase(mine, phases[static_cast<std::size_t>(i)])) continue;
        mine = phases[static_cast<std::size_t>(i)];
        emit dataChanged(index(i), index(i));
    }
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        phases_ = phases;
        endInsertRows();
    }
}

int PhasesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(phases_.size());
}

QVariant PhasesModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Phase& phase = phases_[static_cast<std::size_t>(index.row())];
    const QString title = tr("%1 to %2  %3").arg(clockText(phase.from), clockText(phase.to), phaseWord(phase.kind));
    QString detail;
    if (phase.level_V) detail = tr("held at %1").arg(QString::fromStdString(volts(*phase.level_V, 3)));
    switch (role) {
    case Qt::DisplayRole: return title;
    case Qt::AccessibleTextRole: return QStringLiteral("%1, %2").arg(title, detail);
    case DetailRole: return detail;
    case ShapeRole:
        return static_cast<int>(phase.kind == PhaseKind::blind    ? Shape::hatch
                                : phase.kind == PhaseKind::travel ? Shape::slope
                                : phase.kind == PhaseKind::wiggle ? Shape::notch
                                                                  : Shape::level);
    case ColourRole: return static_cast<int>(Role::quietText);
    case TimeRole: return toSeconds(phase.from);
    default: return {};
    }
}

} // namespace stillwire
