// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_intro.hpp"

#include "app/language/language.hpp"
#include "app/window/hand/drawing_view.hpp"
#include "app/window/look/caution_box.hpp"
#include "app/window/look/choice_box.hpp"
#include "app/window/look/text_label.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {

StartIntro::StartIntro(const Look& look, QWidget* parent) : QWidget(parent), look_(look) {
    auto* column = new QVBoxLayout(this);
    auto* name = new TextLabel(look_, TextSize::word, true, Role::ink, this);
    name->say(QStringLiteral("Stillwire"));
    auto* what = new TextLabel(look_, TextSize::text, false, Role::ink, this);
    what->say(tr(
        "Clip the meter to the signal wire, key on, engine off. The bench leads the hand, watches the wire, and says "
        "what to do with the sensor."));
    drawing_ = new DrawingView(look_, this);
    drawing_->setLeast(60); // the words go before it
    drawing_->show(QStringLiteral("hook-up"), {}, tr("Black lead on battery negative, red lead on a sensor wire"));
    auto* caution = new CautionBox(look_, this);
    const QStringList first{
        tr("Chock the wheels, lower the implement, keep bystanders clear. Nobody starts the engine. Where "
           "this bench and the maker's service literature differ, the maker is right.")};
    caution->show(first, first, false);
    auto* keys = new TextLabel(look_, TextSize::small, false, Role::quietText, this);
    keys->say(tr("Tab moves on, Enter starts, F1 lists every key."));
    language_ = new ChoiceBox(look_, tr("Language"), this);
    for (const Language& language : languages()) language_->addItem(language.name, language.code);
    language_->setCurrentIndex(language_->findData(languageSpoken()));
    connect(language_, &QComboBox::activated, this,
            [this](int at) { emit languageChosen(language_->itemData(at).toString()); });
    column->addWidget(name);
    column->addWidget(what);
    column->addWidget(drawing_);
    column->addWidget(caution);
    column->addStretch(1);
    column->addWidget(keys);
    settings_ = new QPushButton(tr("Settings…"), this);
    settings_->setAccessibleName(settings_->text());
    settings_->setAutoDefault(true);
    connect(settings_, &QPushButton::clicked, this, &StartIntro::settingsAsked);
    auto* foot = new QHBoxLayout;
    foot->addWidget(language_, 1);
    foot->addWidget(settings_);
    column->addLayout(foot);
    connect(&look, &Look::changed, this, &StartIntro::restyle);
    restyle();
}

void StartIntro::restyle() {
    const double across = window()->width() / look_.unit(), high = window()->height() / look_.unit();
    setFixedWidth(look_.ipx(across < 1100 ? 292 : 396));
    drawing_->setVisible(high > 640);
    const int side = look_.ipx(across < 1100 ? 18 : 28);
    layout()->setContentsMargins(side, look_.ipx(20), side, look_.ipx(16));
    layout()->setSpacing(look_.ipx(12));
    settings_->setFont(look_.font(TextSize::text));
}

void StartIntro::resizeEvent(QResizeEvent* event) {
    restyle(); // what it leaves out hangs on the window's size
    QWidget::resizeEvent(event);
}

} // namespace stillwire
