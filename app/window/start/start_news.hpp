// SPDX-License-Identifier: GPL-3.0-or-later
// What went wrong, what is under way, what was left behind: one row each, and only while there is any.
#pragma once

#include "app/window/look/look.hpp"

#include <QWidget>

class QPushButton;
class QVBoxLayout;

namespace stillwire {

class ProgressLine;
class TextLabel;

class StartNews : public QWidget {
    Q_OBJECT
public:
    explicit StartNews(const Look& look, QWidget* parent = nullptr);
    void setTrouble(const QString& trouble);         // one sentence with its mend
    void setBusy(const QString& says, double share); // what is being opened, and how much of it is read
    void setCutShort(const QStringList& paths);      // runs that nobody ended, the newest last

signals:
    void givenUp();
    void openAsked(const QString& path);
    void putAside(const QString& path);

private:
    QPushButton* row(QVBoxLayout* column, TextLabel* says, const QString& deed, const QString& other = {});
    void restyle();
    void hideIfEmpty();

    const Look& look_;
    TextLabel *trouble_, *busy_, *cutShort_;
    ProgressLine* read_;
    QPushButton *giveUp_, *openCutShort_, *putAside_ = nullptr;
    QString cutShortPath_;
};

} // namespace stillwire
