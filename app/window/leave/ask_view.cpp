// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/leave/ask_view.hpp"

#include "app/window/keys.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/paint.hpp"
#include "app/window/look/text_label.hpp"

#include <algorithm>
#include <utility>

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

namespace stillwire {

AskView::AskView(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    setAccessibleName(tr("Question"));
    card_ = new QWidget(this);
    title_ = new TextLabel(look, TextSize::word, true, Role::ink, card_);
    says_ = new TextLabel(look, TextSize::title, false, Role::ink, card_);
    const auto button = [&](KeyAction key, const QString& words) {
        auto* made = new KeyButton(look, TextSize::title, false, card_);
        made->say(keyName(key), words);
        return made;
    };
    goOn_ = button(KeyAction::leave, tr("go on with the run"));
    end_ = button(KeyAction::stop, tr("end it"));
    save_ = button(KeyAction::saveElsewhere, tr("save elsewhere…"));
    column_ = new QVBoxLayout(card_);
    column_->addWidget(title_);
    column_->addWidget(says_);
    answers_ = new QBoxLayout(QBoxLayout::LeftToRight);
    for (KeyButton* answer : {goOn_, save_, end_}) answers_->addWidget(answer);
    column_->addLayout(answers_);
    auto* middle = new QVBoxLayout(this);
    middle->addStretch(1);
    middle->addWidget(card_, 0, Qt::AlignHCenter);
    middle->addStretch(1);
    connect(goOn_, &QPushButton::clicked, this, &AskView::goOn);
    connect(end_, &QPushButton::clicked, this, &AskView::end);
    connect(save_, &QPushButton::clicked, this, &AskView::saveElsewhereAsked);
    connect(&look, &Look::changed, this, &AskView::restyle);
    parent->installEventFilter(this);
    restyle();
    hide();
}

void AskView::ask(const QString& title, const AtStake& stake, std::function<void()> then) {
    then_ = std::move(then);
    title_->say(title);
    says_->say(stake.says.join(QLatin1Char('\n')));
    save_->setVisible(stake.unsaved);
    setAccessibleDescription(title + QLatin1Char(' ') + stake.says.join(QLatin1Char(' ')));
    setGeometry(parentWidget()->rect());
    restyle();
    show();
    raise();
    goOn_->setFocus(); // Enter by mistake ends nothing
    QAccessibleEvent told(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
}

void AskView::goOn() {
    then_ = {};
    if (isHidden()) return;
    hide();
    emit answered();
}

void AskView::end() {
    const std::function<void()> then = std::exchange(then_, {});
    hide();
    emit answered();
    if (then) then();
}

bool AskView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize) {
        setGeometry(parentWidget()->rect());
        restyle();
    }
    return QWidget::eventFilter(watched, event);
}

void AskView::mousePressEvent(QMouseEvent*) {}

void AskView::restyle() {
    card_->setFixedWidth(std::min(look_.ipx(820), parentWidget()->width() - 2 * look_.ipx(24)));
    column_->setContentsMargins(look_.ipx(32), look_.ipx(24), look_.ipx(32), look_.ipx(24));
    column_->setSpacing(look_.ipx(16));
    answers_->setSpacing(look_.ipx(16));
    int wide = 2 * answers_->spacing() + 2 * look_.ipx(32);
    for (const KeyButton* answer : {goOn_, save_, end_})
        if (!answer->isHidden()) wide += answer->sizeHint().width();
    answers_->setDirection(wide > card_->width() ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    card_->setFixedHeight(
        std::max(column_->totalHeightForWidth(card_->width()), column_->totalMinimumSize().height()));
}

void AskView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    QColor veil = look_(Role::bar);
    veil.setAlpha(150); // the run is still seen to go on
    painter.fillRect(rect(), veil);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look_(Role::caution), look_.px(4)));
    painter.setBrush(look_(Role::paper));
    painter.drawRoundedRect(QRectF(card_->geometry()).adjusted(1, 1, -1, -1), look_.px(10), look_.px(10));
}

} // namespace stillwire
