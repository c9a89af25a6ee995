// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/hand_page.hpp"

#include "app/window/hand/drawing_view.hpp"
#include "app/window/hand/pace_view.hpp"
#include "app/window/look/caution_box.hpp"
#include "app/window/look/progress_line.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/words.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {
namespace {

// Left or right, from the mark of the pose that is being held.
QString litSide(const SessionSnapshot& snapshot) {
    if (!snapshot.prompt.poseFor_s) return {};
    for (auto mark = snapshot.marks.rbegin(); mark != snapshot.marks.rend(); ++mark) {
        if (mark->kind() != MarkKind::pose) continue;
        const std::string_view where = mark->argument();
        if (where.ends_with("left")) return QStringLiteral("left");
        if (where.ends_with("right")) return QStringLiteral("right");
        break;
    }
    return {};
}

constexpr int kMostChoices = 4;

// What is done one after the other stands one under the other.
void sayDeeds(TextLabel& label, const QString& sentence) {
    QStringList deeds = sentence.split(QStringLiteral("; "));
    if (deeds.size() < 3) return label.say(sentence);
    for (QString& deed : deeds) {
        deed[0] = deed[0].toUpper();
        if (!deed.endsWith(QLatin1Char('.'))) deed += QLatin1Char('.');
    }
    label.sayInTurn(deeds);
}

bool hasPoses(const std::optional<Step>& step) {
    return step == Step::wiggleShaft || step == Step::wiggleHarness || step == Step::wiggleReference ||
           step == Step::wiggleGround || step == Step::warmRepeat;
}

} // namespace

HandPage::HandPage(const Look& look, const Feed& feed, QWidget* parent) : QWidget(parent), look_(look) {
    title_ = new TextLabel(look, TextSize::title, true, Role::ink, this);
    count_ = new TextLabel(look, TextSize::small, false, Role::quietText, this);
    caution_ = new CautionBox(look, this);
    drawing_ = new DrawingView(look, this);
    instruction_ = new TextLabel(look, TextSize::title, true, Role::ink, this);
    detail_ = new TextLabel(look, TextSize::text, false, Role::ink, this);
    pace_ = new PaceView(look, feed, this);
    wanted_ = new TextLabel(look, TextSize::title, true, Role::ink, this);
    progress_ = new ProgressLine(look, this);
    why_ = new TextLabel(look, TextSize::small, false, Role::quietText, this);

    auto* answers = new QVBoxLayout;
    for (int i = 0; i < kMostChoices; ++i) answers->addWidget(answers_.emplace_back(makeButton()));

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* heading = new QVBoxLayout;
    heading->setSpacing(0);
    heading->addWidget(title_);
    heading->addWidget(count_);
    column->addLayout(heading);
    column->addWidget(caution_);
    column->addWidget(drawing_, 20);
    column->addWidget(instruction_);
    column->addWidget(detail_);
    column->addLayout(answers);
    column->addWidget(pace_);
    column->addWidget(wanted_);
    column->addWidget(progress_);
    column->addWidget(why_);
    column->addStretch(1);
    connect(&look, &Look::changed, this, &HandPage::restyle);
    restyle();
}

void HandPage::restyle() {
    const bool least = room_ == Room::least;
    layout()->setSpacing(look_.ipx(least ? 4 : 8));
    const TextSize says = room_ == Room::ample ? TextSize::title : TextSize::text;
    instruction_->setSize(says);
    wanted_->setSize(says);
    detail_->setSize(least ? TextSize::small : TextSize::text);
    drawing_->setLeast(room_ == Room::ample ? 170 : least ? 75 : 130); // to be read, not only recognised
}

void HandPage::setRoom(Room room) {
    if (room == room_) return;
    room_ = room;
    restyle();
}

QPushButton* HandPage::makeButton() {
    auto* button = new QPushButton(this);
    button->setAutoDefault(true); // Enter presses it; Space goes on
    button->hide();
    connect(button, &QPushButton::clicked, this, [this, at = answers_.size()] {
        if (at < choices_.size()) emit asked(choices_[at].command);
    });
    auto restyle = [this, button] { button->setFont(look_.font(TextSize::text)); };
    connect(&look_, &Look::changed, button, restyle);
    restyle();
    return button;
}

void HandPage::showAnswers(const Prompt& prompt) {
    choices_ = prompt.choices;
    if (choices_.size() > kMostChoices) choices_.resize(kMostChoices);
    for (std::size_t i = 0; i < answers_.size(); ++i) {
        QPushButton& button = *answers_[i];
        const bool wanted = i < choices_.size();
        if (wanted) {
            const QString words = QStringLiteral("%1   %2").arg(i + 1).arg(say(choices_[i].says));
            if (button.text() != words) button.setText(words);
            button.setAccessibleName(say(choices_[i].says));
        }
        button.setVisible(wanted);
    }
}

bool HandPage::fits(int width, int height) {
    caution_->keepRoomAt(width);
    return layout()->minimumHeightForWidth(width) <= height;
}

// A count that goes down keeps its line, and is left out.
QString HandPage::takesRoom() const {
    QStringList all{caution_->accessibleDescription()};
    for (const TextLabel* label : {title_, count_, instruction_, detail_, why_}) all << label->text();
    for (std::size_t i = 0; i < choices_.size(); ++i) all << answers_[i]->text();
    for (const QWidget* widget : std::initializer_list<const QWidget*>{pace_, wanted_, progress_})
        all << QString::number(static_cast<int>(widget->isHidden()));
    return all.join(QLatin1Char('\n'));
}

void HandPage::show(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Prompt& prompt = snapshot.prompt;
    title_->say(say(prompt.title));
    count_->say(prompt.of > 0 ? tr("step %1 of %2").arg(prompt.number).arg(prompt.of) : QString());
    // Before the meter is connected they stand large on the right, where there is no trace yet.
    caution_->show(prompt.step == Step::hookUp ? QStringList() : cautionWords(prompt), prompt.stopNow);
    QString drawing = QString::fromStdString(prompt.drawing);
    if (drawing.isEmpty() && prompt.step) drawing = QString::fromUtf8(stepName(*prompt.step).data());
    drawing_->show(drawing, litSide(snapshot), say(prompt.instruction));
    sayDeeds(*instruction_, say(prompt.offer.empty() ? prompt.instruction : prompt.offer));
    detail_->say(say(prompt.detail));
    showAnswers(prompt);
    const bool asks = !prompt.offer.empty() || !prompt.choices.empty(); // then nothing is paced, and room is short
    // Before the warm look there is a wait, and nothing to pace in it.
    const bool waits = prompt.step == Step::warmRepeat && !prompt.detail.empty();
    pace_->setVisible(!asks && ((hasPoses(prompt.step) && !waits) || prompt.poseFor_s) && !prompt.movingLead);
    pace_->show(prompt);
    wanted_->say(say(prompt.wanted));
    progress_->setVisible(prompt.step.has_value() && !asks);
    progress_->show(prompt.progress);
    why_->say(prompt.why.empty() ? QString() : tr("Why: %1").arg(say(prompt.why)));
}

} // namespace stillwire
