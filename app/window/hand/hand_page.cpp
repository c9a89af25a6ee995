// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/hand/hand_page.hpp"

#include "app/window/hand/drawing_view.hpp"
#include "app/window/hand/pace_view.hpp"
#include "app/window/look/caution_box.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/progress_line.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/words.hpp"

#include <QFontMetrics>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace stillwire {
namespace {

// Which of a drawing's two arrows is lit: the side of the pose that is being held; of a way to go and back, the one
// that leads to the position that is wanted.
QString litSide(const Scene& scene) {
    const Prompt& prompt = scene.snapshot->prompt;
    if (prompt.step && traits(*prompt.step).visits() && scene.sheet && !prompt.position.empty())
        return prompt.position == scene.sheet->rest().name ? QStringLiteral("right") : QStringLiteral("left");
    if (!prompt.asked) return {};
    return QLatin1String(sideName(prompt.asked->place.side().value_or(Side::right)).data());
}

// While the red lead is on its way, where it goes; else what the hand does.
QString drawingOf(const Prompt& prompt) {
    if (prompt.movingLead && prompt.wire == Wire::reference) return QStringLiteral("reference");
    if (prompt.movingLead && prompt.wire == Wire::ground) return QStringLiteral("ground");
    if (prompt.movingLead) return QStringLiteral("signal");
    if (prompt.drawing.empty() && prompt.step) return QString::fromUtf8(stepName(*prompt.step).data());
    return QString::fromStdString(prompt.drawing);
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

bool hasPoses(const std::optional<Step>& step) { return step && traits(*step).wiggles(); }

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
    const bool least = room_ >= Room::least;
    layout()->setSpacing(look_.ipx(least ? 4 : 8));
    const TextSize far = room_ == Room::ample ? TextSize::word : TextSize::title;
    const TextSize says = room_ <= Room::usual ? TextSize::title : TextSize::text;
    caution_->setSize(cautionsLarge_ ? TextSize::text : TextSize::small);
    title_->setSize(far);
    instruction_->setSize(says);
    wanted_->setSize(least ? TextSize::text : far); // asked for across the shop
    detail_->setSize(least ? TextSize::small : TextSize::text);
    drawing_->setLeast(room_ == Room::ample   ? 165
                       : room_ == Room::usual ? 145
                       : least                ? 75
                                              : 130); // to be read, not only recognised
    showWhatHasRoom();
}

void HandPage::showWhatHasRoom() {
    const bool bare = room_ == Room::bare;
    drawing_->setVisible(!bare);
    count_->setVisible(!bare && !count_->text().isEmpty());
    if (bare) progress_->hide(); // what is wanted says it in words
    why_->say(room_ == Room::bare ? QString() : whySays_);
}

void HandPage::setRoom(Room room, bool cautionsLarge) {
    if (room == room_ && cautionsLarge == cautionsLarge_) return;
    room_ = room;
    cautionsLarge_ = cautionsLarge;
    restyle();
}

KeyButton* HandPage::makeButton() {
    auto* button = new KeyButton(look_, TextSize::text, false, this);
    button->hide();
    connect(button, &QPushButton::clicked, this, [this, at = answers_.size()] {
        if (at < choices_.size()) emit asked(choices_[at].command);
    });
    return button;
}

void HandPage::showAnswers(const Prompt& prompt) {
    choices_ = prompt.choices;
    if (choices_.size() > kMostChoices) choices_.resize(kMostChoices);
    for (std::size_t i = 0; i < answers_.size(); ++i) {
        KeyButton& button = *answers_[i];
        const bool wanted = i < choices_.size();
        if (wanted) button.say(QString::number(i + 1), say(choices_[i].says));
        button.setVisible(wanted);
    }
}

bool HandPage::fits(int width, int height) {
    caution_->keepRoomAt(width);
    if (room_ == Room::ample) // large, and on one line each; else nothing is won
        for (const TextLabel* label : {title_, wanted_})
            if (QFontMetrics(label->font()).horizontalAdvance(label->text()) > width) return false;
    return layout()->minimumHeightForWidth(width) <= height;
}

// A count that goes down keeps its line, and is left out.
QString HandPage::takesRoom() const {
    QStringList all{caution_->accessibleDescription(), memory_.fresh().join(QLatin1Char('\n'))};
    for (const TextLabel* label : {title_, count_, instruction_, detail_}) all << label->text();
    all << whySays_;
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
    const QStringList cautions = cautionWords(prompt);
    memory_.take(prompt.step, cautions);
    if (prompt.step == Step::hookUp)
        caution_->show({}, {}, false);
    else
        caution_->show(cautions, memory_.fresh(), prompt.stopNow);
    drawing_->show(drawingOf(prompt), litSide(scene), say(prompt.instruction));
    sayDeeds(*instruction_, say(prompt.instruction));
    detail_->say(say(prompt.detail));
    showAnswers(prompt);
    const bool asks =
        prompt.question != Question::none || !prompt.choices.empty(); // then nothing is paced, and room is short
    // Before the warm look there is a wait, and nothing to pace in it.
    const bool waits = prompt.step == Step::warmRepeat && !prompt.detail.empty();
    pace_->setVisible(!asks && ((hasPoses(prompt.step) && !waits) || prompt.asked) && !prompt.movingLead);
    pace_->show(prompt);
    wanted_->say(say(prompt.wanted));
    // An empty bar with no word of what would fill it says nothing.
    progress_->setVisible(prompt.step.has_value() && !asks && (prompt.progress > 0 || !prompt.wanted.empty()));
    progress_->show(prompt.progress);
    whySays_ = prompt.why.empty() ? QString() : tr("Why: %1").arg(say(prompt.why));
    showWhatHasRoom();
}

} // namespace stillwire
