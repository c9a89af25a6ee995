// SPDX-License-Identifier: GPL-3.0-or-later
// The place for everything that can be set, a row each; what is chosen holds at once.
#pragma once

#include "app/window/settings/settings.hpp"

#include <functional>
#include <utility>
#include <vector>

#include <QWidget>

class QGridLayout;
class QPushButton;

namespace stillwire {

class ChoiceBox;
class TextLabel;

class SettingsPage : public QWidget {
    Q_OBJECT
public:
    SettingsPage(const Look& look, Settings& settings, QWidget* parent = nullptr);

signals:
    void done();
    void languageChosen(const QString& code);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    using Entries = std::vector<std::pair<QString, QVariant>>;
    ChoiceBox* row(const QString& name, const Entries& entries, std::function<QVariant()> now,
                   std::function<void(const QVariant&)> choose);
    void folderRow();
    void chooseFolder();
    void refresh();

    const Look& look_;
    Settings& settings_;
    QWidget* rows_;
    QGridLayout* grid_;
    std::vector<std::pair<ChoiceBox*, std::function<QVariant()>>> boxes_; // and what each has to show
    TextLabel* folder_ = nullptr;
    QPushButton *choose_ = nullptr, *usual_ = nullptr;
};

} // namespace stillwire
