// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/start_intro.hpp"

#include "app/language/language.hpp"
#include "app/window/hand/drawing_view.hpp"
#include "app/window/look/caution_box.hpp"
#include "app/window/look/text_label.hpp"

#include <QComboBox>
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
    auto* drawing = new DrawingView(look_, this);
    drawing->show(QStringLiteral("hook-up"), {}, tr("Black lead on battery negative, red lead on a sensor wire"));
    auto* caution = new CautionBox(look_, this);
    caution->show({tr("Chock the wheels, lower the implement, keep bystanders clear. Nobody starts the engine. Where "
                      "this bench and the maker's service literature differ, the maker is right.")},
                  false);
    auto* keys = new TextLabel(look_, TextSize::small, false, Role::quietText, this);
    keys->say(tr("Tab moves on, Enter starts, F1 lists every key."));
    language_ = new QComboBox(this);
    language_->setAccessibleName(tr("Language"));
    for (const Language& language : languages()) language_->addItem(language.name, language.code);
    language_->setCurrentIndex(language_->findData(languageSpoken()));
    connect(language_, &QComboBox::activated, this,
            [this](int at) { emit languageChosen(language_->itemData(at).toString()); });
    column->addWidget(name);
    column->addWidget(what);
    column->addWidget(drawing);
    column->addWidget(caution);
    column->addStretch(1);
    column->addWidget(keys);
    column->addWidget(language_, 0, Qt::AlignLeft);
    connect(&look, &Look::changed, this, &StartIntro::restyle);
    restyle();
}

void StartIntro::restyle() {
    setFixedWidth(look_.ipx(396));
    layout()->setContentsMargins(look_.ipx(28), look_.ipx(24), look_.ipx(28), look_.ipx(20));
    layout()->setSpacing(look_.ipx(14));
    language_->setFont(look_.font(TextSize::text));
}

} // namespace stillwire
