// SPDX-License-Identifier: GPL-3.0-or-later
// What the desktop wishes of every window: dark or light, and whether things may move. Asked of its settings portal
// on the session bus without waiting; where nobody answers, the palette that Qt was given tells dark from light.
#pragma once

#include <QObject>
#include <QString>
#include <QVariant>

class QDBusVariant;

namespace stillwire {

class Desktop : public QObject {
    Q_OBJECT
public:
    explicit Desktop(QObject* parent = nullptr);
    void ask();
    [[nodiscard]] bool dark() const { return dark_; }
    [[nodiscard]] bool calm() const { return calm_; }
    void take(const QString& group, const QString& key, const QVariant& value);

signals:
    void changed();

private slots:
    void settingChanged(const QString& group, const QString& key, const QDBusVariant& value);

private:
    void askFor(const char* group, const char* key);

    bool dark_ = false, calm_ = false;
};

} // namespace stillwire
