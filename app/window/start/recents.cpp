// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/recents.hpp"

#include "app/language/say.hpp"
#include "app/window/habits.hpp"
#include "app/window/look/paint.hpp"
#include "app/window/start/capture_edit.hpp"
#include "app/window/start/recents_delegate.hpp"

#include <algorithm>

#include <QContextMenuEvent>
#include <QDesktopServices>
#include <QFileInfo>
#include <QInputDialog>
#include <QMenu>
#include <QUrl>

namespace stillwire {

void RecentsModel::setPaths(const QStringList& paths) {
    QStringList now;
    for (const Glance& row : rows_) now << row.path;
    if (QStringList sorted = paths; now.size() == sorted.size()) { // the same ones: nothing jumps under the hand
        now.sort();
        sorted.sort();
        if (now == sorted && !rows_.empty() && rows_.front().path == paths.front()) return;
    }
    beginResetModel();
    std::vector<Glance> rows;
    for (const QString& path : paths) {
        const auto known = std::find_if(rows_.begin(), rows_.end(), [&](const Glance& g) { return g.path == path; });
        if (known != rows_.end()) {
            rows.push_back(*known);
            continue;
        }
        Glance unseen;
        unseen.path = path;
        unseen.name = titleOfCapture(path);
        rows.push_back(unseen);
    }
    rows_ = std::move(rows);
    std::stable_partition(rows_.begin(), rows_.end(), [](const Glance& g) { return !g.empty; });
    endResetModel();
}

void RecentsModel::setGlance(const Glance& glance) {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].path != glance.path) continue;
        rows_[i] = glance;
        const QModelIndex at = index(static_cast<int>(i));
        emit dataChanged(at, at);
    }
    if (glance.empty) emptyOnesLast();
}

void RecentsModel::emptyOnesLast() {
    for (int i = 0, left = rowCount(); left > 0; --left) {
        if (!rows_[static_cast<std::size_t>(i)].empty) {
            ++i;
            continue;
        }
        const int last = rowCount() - 1;
        if (i == last || !beginMoveRows({}, i, i, {}, last + 1)) return;
        std::rotate(rows_.begin() + i, rows_.begin() + i + 1, rows_.end());
        endMoveRows();
    }
}

void RecentsModel::renamed(const QString& from, const QString& to) {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].path != from) continue;
        rows_[i].path = to;
        rows_[i].name = titleOfCapture(to);
        emit dataChanged(index(static_cast<int>(i)), index(static_cast<int>(i)));
    }
}

void RecentsModel::remove(const QString& path) {
    for (int i = rowCount() - 1; i >= 0; --i) {
        if (rows_[static_cast<std::size_t>(i)].path != path) continue;
        beginRemoveRows({}, i, i);
        rows_.erase(rows_.begin() + i);
        endRemoveRows();
    }
}

int RecentsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RecentsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Glance& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return row.name;
    if (role == Qt::ToolTipRole) return row.path;
    if (role == Qt::AccessibleTextRole) {
        QStringList all;
        for (const QString& words : {row.name, row.when, row.machine, row.note, row.verdict, row.trouble})
            if (!words.isEmpty()) all << words;
        return all.join(QStringLiteral(", "));
    }
    return {};
}

RecentsList::RecentsList(const Look& look, RecentsModel& model, QWidget* parent)
    : RowsList(parent), look_(look), model_(model) {
    setModel(&model);
    setItemDelegate(new RecentsDelegate(look, model, this));
    setAccessibleName(tr("Recent captures"));
    setUniformItemSizes(true);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    connect(this, &QListView::clicked, this, [this](const QModelIndex& index) {
        const QPoint at = viewport()->mapFromGlobal(QCursor::pos());
        const QRect row = visualRect(index);
        if (RecentsDelegate::moreArea(look_, row).contains(at)) return offer(index, QCursor::pos());
        emit chosen(pathOf(index));
    });
    connect(&look, &Look::changed, this, [this] { doItemsLayout(); });
}

QString RecentsList::pathOf(const QModelIndex& index) const {
    return index.isValid() ? model_.rows()[static_cast<std::size_t>(index.row())].path : QString();
}

void RecentsList::keyPressEvent(QKeyEvent* event) {
    const QString path = pathOf(currentIndex());
    if (!path.isEmpty() && event->modifiers() == Qt::NoModifier) switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Space: return emit chosen(path);
        case Qt::Key_F2: return rename(path);
        case Qt::Key_Delete: habits::forgetCapture(path); return model_.remove(path);
        default: break;
        }
    RowsList::keyPressEvent(event);
}

void RecentsList::contextMenuEvent(QContextMenuEvent* event) {
    const bool byKey = event->reason() == QContextMenuEvent::Keyboard;
    const QModelIndex index = byKey ? currentIndex() : indexAt(event->pos());
    if (index.isValid())
        offer(index, byKey ? viewport()->mapToGlobal(visualRect(index).center()) : event->globalPos());
}

void RecentsList::offer(const QModelIndex& index, const QPoint& at) {
    const QString path = pathOf(index);
    setCurrentIndex(index);
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->setFont(look_.font(TextSize::text));
    menu->addAction(tr("Open"), this, [this, path] { emit chosen(path); });
    menu->addAction(tr("Call it something else…  F2"), this, [this, path] { rename(path); });
    menu->addAction(tr("Write a note to it…"), this, [this, path] { note(path); });
    menu->addAction(tr("Show it in its folder"), this,
                    [path] { QDesktopServices::openUrl(QUrl::fromLocalFile(QFileInfo(path).absolutePath())); });
    menu->addAction(tr("Take it off this list; the file stays  Delete"), this, [this, path] {
        habits::forgetCapture(path);
        model_.remove(path);
    });
    menu->popup(at);
}

void RecentsList::rename(const QString& path) {
    bool sure = false;
    const QString title = QInputDialog::getText(this, tr("Call it something else"), tr("What the capture is called:"),
                                                QLineEdit::Normal, titleOfCapture(path), &sure);
    if (!sure || title.simplified() == titleOfCapture(path)) return;
    auto renamed = renameCapture(path, title);
    if (!renamed) return emit troubled(say(renamed.error().sentence()));
    habits::renameCapture(path, *renamed);
    model_.renamed(path, *renamed);
}

void RecentsList::note(const QString& path) {
    const auto row =
        std::find_if(model_.rows().begin(), model_.rows().end(), [&](const Glance& g) { return g.path == path; });
    if (row == model_.rows().end()) return;
    Glance noted = *row;
    bool sure = false;
    const QString text =
        QInputDialog::getText(this, tr("Write a note to it"), tr("A line that stays with the capture:"),
                              QLineEdit::Normal, noted.note, &sure);
    if (!sure || text.simplified() == noted.note) return;
    if (Status written = noteOnCapture(path, text); !written) return emit troubled(say(written.error().sentence()));
    noted.note = text.simplified();
    model_.setGlance(noted);
}

} // namespace stillwire
