// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/settings/desktop.hpp"

#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QDBusVariant>
#include <QGuiApplication>
#include <QPalette>

namespace stillwire {
namespace {

constexpr const char *kService = "org.freedesktop.portal.Desktop", *kPath = "/org/freedesktop/portal/desktop",
                     *kSettings = "org.freedesktop.portal.Settings";
constexpr const char *kAppearance = "org.freedesktop.appearance", *kScheme = "color-scheme",
                     *kMotion = "reduced-motion";
constexpr const char *kInterface = "org.gnome.desktop.interface", *kAnimations = "enable-animations";
constexpr uint kDark = 1, kReduced = 1; // of color-scheme and reduced-motion

// The portal wraps a value once or twice, by its version.
QVariant bare(QVariant value) {
    while (value.canConvert<QDBusVariant>()) value = value.value<QDBusVariant>().variant();
    return value;
}

} // namespace

Desktop::Desktop(QObject* parent) : QObject(parent) {
    const QPalette palette = QGuiApplication::palette();
    dark_ = palette.color(QPalette::WindowText).lightness() > palette.color(QPalette::Window).lightness();
}

void Desktop::ask() {
    QDBusConnection bus = QDBusConnection::sessionBus();
    if (!bus.isConnected()) return;
    bus.connect(QLatin1String(kService), QLatin1String(kPath), QLatin1String(kSettings),
                QStringLiteral("SettingChanged"), this, SLOT(settingChanged(QString, QString, QDBusVariant)));
    askFor(kAppearance, kScheme);
    askFor(kAppearance, kMotion);
    askFor(kInterface, kAnimations);
}

void Desktop::askFor(const char* group, const char* key) {
    QDBusMessage question = QDBusMessage::createMethodCall(QLatin1String(kService), QLatin1String(kPath),
                                                           QLatin1String(kSettings), QStringLiteral("Read"));
    question << QString::fromLatin1(group) << QString::fromLatin1(key);
    auto* answer = new QDBusPendingCallWatcher(QDBusConnection::sessionBus().asyncCall(question), this);
    connect(answer, &QDBusPendingCallWatcher::finished, this, [this, answer, group, key] {
        answer->deleteLater();
        const QDBusPendingReply<QDBusVariant> reply = *answer;
        if (reply.isValid()) take(QString::fromLatin1(group), QString::fromLatin1(key), reply.value().variant());
    });
}

void Desktop::settingChanged(const QString& group, const QString& key, const QDBusVariant& value) {
    take(group, key, value.variant());
}

void Desktop::take(const QString& group, const QString& key, const QVariant& wrapped) {
    const QVariant value = bare(wrapped);
    const bool dark = dark_, calm = calm_;
    if (group == QLatin1String(kAppearance) && key == QLatin1String(kScheme)) dark_ = value.toUInt() == kDark;
    if (group == QLatin1String(kAppearance) && key == QLatin1String(kMotion)) calm_ = value.toUInt() == kReduced;
    if (group == QLatin1String(kInterface) && key == QLatin1String(kAnimations)) calm_ = !value.toBool();
    if (dark != dark_ || calm != calm_) emit changed();
}

} // namespace stillwire
