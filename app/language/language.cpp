// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/language/language.hpp"

#include <algorithm>
#include <clocale>

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QSettings>
#include <QTranslator>

namespace stillwire {
namespace {

const QString kSetting = QStringLiteral("language");

bool known(const QString& code) {
    return std::any_of(languages().begin(), languages().end(), [&](const Language& l) { return l.code == code; });
}

struct Spoken {
    QString code = QStringLiteral("en");
    std::vector<std::unique_ptr<QTranslator>> translators;
};
Spoken& spoken() {
    static Spoken now;
    return now;
}

void install(const QString& file, const QString& folder) {
    auto translator = std::make_unique<QTranslator>();
    if (!translator->load(file, folder)) return; // Qt's own may not be installed
    QCoreApplication::installTranslator(translator.get());
    spoken().translators.push_back(std::move(translator));
}

} // namespace

const std::vector<Language>& languages() {
    static const std::vector<Language> all{{QStringLiteral("en"), QStringLiteral("English")},
                                           {QStringLiteral("es"), QStringLiteral("Español")}};
    return all;
}

QString languageWanted() {
    const QString asked = qEnvironmentVariable("STILLWIRE_LANGUAGE").left(2).toLower();
    if (known(asked)) return asked;
    const QString remembered = QSettings().value(kSetting).toString();
    if (known(remembered)) return remembered;
    for (const QString& name : QLocale::system().uiLanguages())
        if (known(name.left(2))) return name.left(2);
    return QStringLiteral("en");
}

void rememberLanguage(const QString& code) { QSettings().setValue(kSetting, code); }

void speak(const QString& code) {
    // Qt has taken on the desktop's locale, and with it its decimal sign; meters and captures have a point.
    std::setlocale(LC_NUMERIC, "C");
    spoken().translators.clear(); // a translator takes itself out
    spoken().code = known(code) ? code : QStringLiteral("en");
    QLocale::setDefault(QLocale(spoken().code));
    if (spoken().code == QLatin1String("en")) return;
    install(QStringLiteral("qtbase_") + spoken().code, QLibraryInfo::path(QLibraryInfo::TranslationsPath));
    install(QStringLiteral("stillwire_") + spoken().code, QStringLiteral(":/translations"));
}

QString languageSpoken() { return spoken().code; }

Speaking::Speaking() {
    static int count = 1;
    static char name[] = "stillwire";
    static char* arguments[] = {name, nullptr};
    if (!QCoreApplication::instance()) {
        // Qt tells stderr when the locale is not UTF-8; to a report that is all one.
        const QtMessageHandler before =
            qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
        application_ = std::make_unique<QCoreApplication>(count, arguments);
        qInstallMessageHandler(before);
        nameProgram();
    }
    speak(languageWanted());
}

Speaking::~Speaking() {
    if (application_) spoken().translators.clear();
}

void nameProgram() {
    QCoreApplication::setOrganizationName(QStringLiteral("stillwire"));
    QCoreApplication::setApplicationName(QStringLiteral("stillwire"));
}

} // namespace stillwire
