// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/settings/settings.hpp"

#include <QSettings>

namespace stillwire {
namespace {

constexpr const char *kNight = "night", *kCalm = "calm", *kType = "type", *kMute = "mute", *kHum = "sound/voltage",
                     *kAloud = "sound/prompts", *kFar = "far", *kCaptures = "captures";

// What was chosen, or nothing; a window of an earlier day wrote "night" as a plain yes or no.
Settings::Follow followed(const QSettings& settings, const char* key) {
    const QVariant value = settings.value(QLatin1String(key));
    if (!value.isValid()) return Settings::Follow::desktop;
    return value.toBool() ? Settings::Follow::yes : Settings::Follow::no;
}

void remember(const char* key, const QVariant& value) {
    QSettings settings;
    if (value.isValid())
        settings.setValue(QLatin1String(key), value);
    else
        settings.remove(QLatin1String(key));
}

QVariant asValue(Settings::Follow follow) {
    return follow == Settings::Follow::desktop ? QVariant() : QVariant(follow == Settings::Follow::yes);
}

} // namespace

Settings::Settings(QObject* parent) : QObject(parent) {
    const QSettings settings;
    const auto flag = [&](const char* key, bool usual) { return settings.value(QLatin1String(key), usual).toBool(); };
    night_ = followed(settings, kNight);
    calm_ = followed(settings, kCalm);
    const int type = settings.value(QLatin1String(kType), 0).toInt();
    type_ = static_cast<Look::Type>(type < 0 || type > 2 ? 0 : type);
    muted_ = flag(kMute, false);
    hum_ = flag(kHum, false);
    aloud_ = flag(kAloud, true);
    farByItself_ = flag(kFar, true);
    captures_ = settings.value(QLatin1String(kCaptures)).toString();
}

void Settings::setNight(Follow night) {
    night_ = night;
    remember(kNight, asValue(night));
    emit changed();
}

void Settings::setCalm(Follow calm) {
    calm_ = calm;
    remember(kCalm, asValue(calm));
    emit changed();
}

void Settings::setType(Look::Type type) {
    type_ = type;
    remember(kType, static_cast<int>(type));
    emit changed();
}

void Settings::setMuted(bool muted) {
    muted_ = muted;
    remember(kMute, muted);
    emit changed();
}

void Settings::setHum(bool hum) {
    hum_ = hum;
    remember(kHum, hum);
    emit changed();
}

void Settings::setAloud(bool aloud) {
    aloud_ = aloud;
    remember(kAloud, aloud);
    emit changed();
}

void Settings::setFarByItself(bool far) {
    farByItself_ = far;
    remember(kFar, far);
    emit changed();
}

void Settings::setCaptures(const QString& folder) {
    captures_ = folder;
    remember(kCaptures, folder.isEmpty() ? QVariant() : QVariant(folder));
    emit changed();
}

} // namespace stillwire
