// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/settings/settings_page.hpp"

#include "app/language/language.hpp"
#include "app/window/keys.hpp"
#include "app/window/look/choice_box.hpp"
#include "app/window/look/key_button.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/start/capture_place.hpp"

#include <QDir>
#include <QFileDialog>
#include <QGridLayout>
#include <QPainter>
#include <QScrollArea>
#include <QVBoxLayout>

namespace stillwire {
namespace {

QVariant valueOf(Settings::Follow follow) { return static_cast<int>(follow); }
Settings::Follow followOf(const QVariant& value) { return static_cast<Settings::Follow>(value.toInt()); }

} // namespace

SettingsPage::SettingsPage(const Look& look, Settings& settings, QWidget* parent)
    : QWidget(parent), look_(look), settings_(settings) {
    auto* title = new TextLabel(look, TextSize::word, true, Role::ink, this);
    title->say(tr("Settings"));
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus); // each row comes into view with the keyboard
    rows_ = new QWidget;
    scroll->setWidget(rows_);
    grid_ = new QGridLayout(rows_);
    using Follow = Settings::Follow;
    row(
        tr("Light"),
        {{tr("as the desktop"), valueOf(Follow::desktop)},
         {tr("day"), valueOf(Follow::no)},
         {tr("night"), valueOf(Follow::yes)}},
        [this] { return valueOf(settings_.night()); },
        [this](const QVariant& v) { settings_.setNight(followOf(v)); });
    row(
        tr("Size of the type"), {{tr("usual"), 0}, {tr("large"), 1}, {tr("largest"), 2}},
        [this] { return static_cast<int>(settings_.type()); },
        [this](const QVariant& v) { settings_.setType(static_cast<Look::Type>(v.toInt())); });
    row(
        tr("Large words once the hands are busy"), {{tr("by themselves"), true}, {tr("only by the key"), false}},
        [this] { return settings_.farByItself(); },
        [this](const QVariant& v) { settings_.setFarByItself(v.toBool()); });
    row(
        tr("Sound"), {{tr("on"), false}, {tr("muted"), true}}, [this] { return settings_.muted(); },
        [this](const QVariant& v) { settings_.setMuted(v.toBool()); });
    row(
        tr("Voice"), {{tr("speaks the prompts"), true}, {tr("says nothing"), false}},
        [this] { return settings_.aloud(); }, [this](const QVariant& v) { settings_.setAloud(v.toBool()); });
    row(
        tr("Tone that follows the voltage"), {{tr("off"), false}, {tr("on"), true}},
        [this] { return settings_.hum(); }, [this](const QVariant& v) { settings_.setHum(v.toBool()); });
    row(
        tr("Motion"),
        {{tr("as the desktop"), valueOf(Follow::desktop)},
         {tr("all of it"), valueOf(Follow::no)},
         {tr("as little as can be"), valueOf(Follow::yes)}},
        [this] { return valueOf(settings_.calm()); }, [this](const QVariant& v) { settings_.setCalm(followOf(v)); });
    Entries spoken;
    for (const Language& language : languages()) spoken.emplace_back(language.name, language.code);
    row(
        tr("Language"), spoken, [] { return languageSpoken(); },
        [this](const QVariant& v) { emit languageChosen(v.toString()); });
    folderRow();
    grid_->setColumnStretch(2, 1);
    grid_->setRowStretch(grid_->rowCount(), 1);
    auto* back = new KeyButton(look, TextSize::text, false, this);
    back->say(keyName(KeyAction::leave), tr("back"));
    connect(back, &QPushButton::clicked, this, &SettingsPage::done);
    auto* column = new QVBoxLayout(this);
    column->addWidget(title);
    column->addWidget(scroll, 1);
    column->addWidget(back, 0, Qt::AlignLeft);
    auto restyle = [this, column] {
        const int edge = look_.ipx(40);
        column->setContentsMargins(edge, look_.ipx(24), edge, look_.ipx(20));
        column->setSpacing(look_.ipx(12));
        grid_->setHorizontalSpacing(look_.ipx(24));
        grid_->setVerticalSpacing(look_.ipx(12));
        for (auto& [box, now] : boxes_) box->setMinimumWidth(look_.ipx(300));
        for (QPushButton* button : {choose_, usual_}) button->setFont(look_.font(TextSize::text));
    };
    connect(&look, &Look::changed, this, restyle);
    connect(&settings, &Settings::changed, this, &SettingsPage::refresh);
    restyle();
    refresh();
}

ChoiceBox* SettingsPage::row(const QString& name, const Entries& entries, std::function<QVariant()> now,
                             std::function<void(const QVariant&)> choose) {
    const int at = grid_->rowCount();
    auto* label = new TextLabel(look_, TextSize::text, true, Role::ink, rows_);
    label->say(name);
    auto* box = new ChoiceBox(look_, name, rows_);
    for (const auto& [words, value] : entries) box->addItem(words, value);
    label->setBuddy(box);
    grid_->addWidget(label, at, 0);
    grid_->addWidget(box, at, 1);
    connect(box, &QComboBox::activated, this,
            [box, choose = std::move(choose)](int index) { choose(box->itemData(index)); });
    boxes_.emplace_back(box, std::move(now));
    return box;
}

void SettingsPage::folderRow() {
    const int at = grid_->rowCount();
    auto* label = new TextLabel(look_, TextSize::text, true, Role::ink, rows_);
    label->say(tr("Folder of the captures"));
    folder_ = new TextLabel(look_, TextSize::text, false, Role::ink, rows_);
    const auto button = [&](const QString& words) {
        auto* made = new QPushButton(words, rows_);
        made->setAccessibleName(words);
        made->setAutoDefault(true);
        return made;
    };
    choose_ = button(tr("Choose a folder…"));
    usual_ = button(tr("The usual one"));
    grid_->addWidget(label, at, 0);
    grid_->addWidget(choose_, at, 1);
    grid_->addWidget(usual_, at, 2, Qt::AlignLeft);
    grid_->addWidget(folder_, at + 1, 1, 1, 2);
    connect(choose_, &QPushButton::clicked, this, &SettingsPage::chooseFolder);
    connect(usual_, &QPushButton::clicked, this, [this] { settings_.setCaptures({}); });
}

void SettingsPage::chooseFolder() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder of the captures"), capturesFolder());
    if (!folder.isEmpty()) settings_.setCaptures(folder);
}

void SettingsPage::refresh() {
    for (const auto& [box, now] : boxes_) box->setCurrentIndex(std::max(0, box->findData(now())));
    folder_->say(QDir::toNativeSeparators(capturesFolder()));
    usual_->setVisible(!settings_.captures().isEmpty());
}

void SettingsPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_(Role::paper));
}

} // namespace stillwire
