// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/choice_box.hpp"

#include "app/window/look/paint.hpp"

#include <algorithm>

#include <QListView>
#include <QPainter>
#include <QScreen>
#include <QStyleOptionComboBox>
#include <QStylePainter>
#include <QStyledItemDelegate>
#include <QWheelEvent>

namespace stillwire {
namespace {

// One entry: its words, and a tick before the one that is chosen.
class EntryDelegate : public QStyledItemDelegate {
public:
    EntryDelegate(const Look& look, const QComboBox& box) : look_(look), box_(box) {}
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const QFontMetricsF metrics(look_.font(TextSize::text, true));
        return {static_cast<int>(metrics.horizontalAdvance(index.data().toString())) + look_.ipx(60), look_.ipx(44)};
    }
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        painter->save();
        const bool chosen = index.row() == box_.currentIndex();
        const bool under = option.state & (QStyle::State_Selected | QStyle::State_MouseOver);
        painter->fillRect(option.rect, look_(under ? Role::trace : Role::plot));
        const QColor ink = look_(under ? Role::plot : Role::ink);
        const QRectF box(option.rect);
        if (chosen)
            drawShape(*painter,
                      QRectF(box.left() + look_.px(14), box.center().y() - look_.px(8), look_.px(16), look_.px(16)),
                      Shape::tick, ink, look_.px(3));
        painter->setFont(look_.font(TextSize::text, chosen));
        painter->setPen(ink);
        painter->drawText(box.adjusted(look_.px(42), 0, -look_.px(8), 0), Qt::AlignLeft | Qt::AlignVCenter,
                          index.data().toString());
        painter->restore();
    }

private:
    const Look& look_;
    const QComboBox& box_;
};

} // namespace

ChoiceBox::ChoiceBox(const Look& look, const QString& name, QWidget* parent) : QComboBox(parent), look_(look) {
    setAccessibleName(name);
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(10);
    setMaxVisibleItems(12);
    auto* list = new QListView(this);
    list->setUniformItemSizes(true);
    list->setMouseTracking(true);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setView(list);
    list->setItemDelegate(new EntryDelegate(look, *this));
    list->itemDelegate()->setParent(list);
    connect(&look, &Look::changed, this, &ChoiceBox::restyle);
    restyle();
}

void ChoiceBox::restyle() {
    setFont(look_.font(TextSize::text));
    setMinimumHeight(look_.ipx(40));
    updateGeometry();
}

// The list and the frame Qt puts around it would both draw an edge; and it is as wide as its longest entry.
void ChoiceBox::showPopup() {
    int widest = width();
    for (int row = 0; row < count(); ++row) {
        QStyleOptionViewItem plain;
        widest =
            std::max(widest, view()->itemDelegate()->sizeHint(plain, model()->index(row, modelColumn())).width());
    }
    view()->setMinimumWidth(std::min(widest, screen()->availableGeometry().width()));
    if (auto* frame = qobject_cast<QFrame*>(view()->parentWidget())) {
        frame->setFrameShape(QFrame::NoFrame);
        frame->setContentsMargins(0, 0, 0, 0);
    }
    QComboBox::showPopup();
}

void ChoiceBox::wheelEvent(QWheelEvent* event) { event->ignore(); } // the page under it scrolls

void ChoiceBox::paintEvent(QPaintEvent*) {
    QStylePainter painter(this);
    QStyleOptionComboBox option;
    initStyleOption(&option);
    const QString words = option.currentText;
    option.currentText.clear();
    painter.drawComplexControl(QStyle::CC_ComboBox, option);
    FittedText text(painter, *this);
    text.line(QRectF(rect()).adjusted(look_.px(13), 0, -look_.px(30), 0), Qt::AlignLeft | Qt::AlignVCenter, words,
              look_.font(TextSize::text), look_(isEnabled() ? Role::ink : Role::quietText));
}

} // namespace stillwire
