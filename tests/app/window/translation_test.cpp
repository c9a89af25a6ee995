// SPDX-License-Identifier: GPL-3.0-or-later
// Every text people may read is in every language, whole, with its figures in it.
#include "app/language/language.hpp"
#include "app/language/say.hpp"
#include "core/judge/phrases.hpp"
#include "core/procedure/texts.hpp"
#include "tests/app/support/source_texts.hpp"

#include <clocale>
#include <map>
#include <set>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QLocale>
#include <QProcess>
#include <QRegularExpression>
#include <QSettings>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

const QString kSource = QStringLiteral(STILLWIRE_SOURCE);
QString catalogue(const QString& language) {
    return kSource + QStringLiteral("/resources/translations/stillwire_%1.ts").arg(language);
}

struct Message {
    QString context, source, translation, type;
};

std::vector<Message> messagesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    QXmlStreamReader xml(&file);
    std::vector<Message> all;
    QString context;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement) continue;
        if (xml.name() == QLatin1String("name")) context = xml.readElementText();
        if (xml.name() == QLatin1String("message")) all.push_back({context, {}, {}, {}});
        if (xml.name() == QLatin1String("source")) all.back().source = xml.readElementText();
        if (xml.name() == QLatin1String("translation")) {
            all.back().type = xml.attributes().value(QLatin1String("type")).toString();
            all.back().translation = xml.readElementText(QXmlStreamReader::IncludeChildElements);
        }
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return all;
}

// "%1", "%2", "%%" … with how often each stands there.
std::map<QString, int> placesOf(const QString& text) {
    static const QRegularExpression place(QStringLiteral("%([1-9%n]| |$)"));
    std::map<QString, int> places;
    for (auto found = place.globalMatch(text); found.hasNext();) ++places[found.next().captured()];
    return places;
}

std::vector<QString> others() {
    std::vector<QString> codes;
    for (const Language& language : languages())
        if (language.code != QLatin1String("en")) codes.push_back(language.code);
    return codes;
}

class Spanish : public ::testing::Test {
protected:
    void SetUp() override { speak(QStringLiteral("es")); }
    void TearDown() override { speak(QStringLiteral("en")); }
};

TEST(Translation, TheListOfCoreTextsIsUpToDate) {
    QFile file(kSource + QStringLiteral("/resources/translations/texts.cpp"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll().toStdString(), test::textsForLupdate(STILLWIRE_SOURCE))
        << "run resources/translations/update";
}

// lupdate on a copy: what it finds in the sources must be there already, finished.
TEST(Translation, NothingIsLeftUntranslated) {
    for (const QString& code : others()) {
        QTemporaryDir folder;
        const QString copy = folder.filePath(QStringLiteral("copy_%1.ts").arg(code));
        ASSERT_TRUE(QFile::copy(catalogue(code), copy));
        QProcess lupdate;
        lupdate.setWorkingDirectory(kSource);
        lupdate.setProcessChannelMode(QProcess::MergedChannels);
        lupdate.start(QStringLiteral(STILLWIRE_LUPDATE),
                      {"-no-obsolete", "-locations", "none", "-I", ".", "app/language", "app/window",
                       "resources/translations/texts.cpp", "-ts", copy});
        ASSERT_TRUE(lupdate.waitForFinished(120'000));
        ASSERT_EQ(lupdate.exitCode(), 0) << lupdate.readAll().toStdString();
        const auto found = messagesOf(copy);
        EXPECT_GT(found.size(), 800U);
        for (const Message& m : found)
            EXPECT_TRUE(m.type.isEmpty() && !m.translation.isEmpty())
                << code.toStdString() << ": " << m.context.toStdString() << ": " << m.source.toStdString();
        EXPECT_EQ(found.size(), messagesOf(catalogue(code)).size()) << "the catalogue holds what nobody says";
    }
}

TEST(Translation, KeepsEveryPlaceForAFigure) {
    for (const QString& code : others())
        for (const Message& m : messagesOf(catalogue(code)))
            EXPECT_EQ(placesOf(m.source), placesOf(m.translation))
                << m.source.toStdString() << " -> " << m.translation.toStdString();
}

// A text that is the same in both languages is a figure, a key or a shared word; longer ones were forgotten.
TEST(Translation, SaysSomethingElseThanTheEnglish) {
    for (const QString& code : others())
        for (const Message& m : messagesOf(catalogue(code)))
            if (m.source.count(QRegularExpression(QStringLiteral("\\b[a-z]{3,}\\b"))) >= 3) {
                EXPECT_NE(m.source, m.translation) << m.context.toStdString();
            }
}

TEST(Translation, BeginsAndEndsAsTheEnglishDoes) {
    for (const QString& code : others())
        for (const Message& m : messagesOf(catalogue(code)))
            for (const char* end : {".", ":", "…", " "}) {
                const QString sign = QString::fromUtf8(end);
                EXPECT_EQ(m.source.endsWith(sign), m.translation.endsWith(sign))
                    << m.source.toStdString() << " -> " << m.translation.toStdString();
            }
}

TEST_F(Spanish, IsSpokenWithTheFiguresOfCore) {
    EXPECT_EQ(say({phrases::kTurnTo, {"4.150 V"}}).toStdString(),
              "Afloje un poco el sensor y gírelo hasta que el multímetro marque 4.150 V.");
    EXPECT_EQ(say({"%1: %2", {byName("pressed"), Sentence{"not measured"}}}).toStdString(), "pisado: sin medir");
    EXPECT_EQ(say({"%1", {placeAsSaid(PosePlace::parse("section-2/left"))}}).toStdString(), "tramo 2, izquierda");
    EXPECT_EQ(sayName("a name of my own").toStdString(), "a name of my own");
    speak(QStringLiteral("en"));
    EXPECT_EQ(say({"%1", {placeAsSaid(PosePlace::parse("section-2/left"))}}).toStdString(), "section 2, left");
}

TEST_F(Spanish, LeavesTheDecimalPointAlone) {
    EXPECT_EQ(volts(4.2134), "4.21 V");
    EXPECT_STREQ(std::localeconv()->decimal_point, ".");
}

TEST(LanguageWanted, IsTheVariableThenTheMemoryThenTheSystem) {
    QSettings().clear();
    qputenv("STILLWIRE_LANGUAGE", "es");
    EXPECT_EQ(languageWanted(), QStringLiteral("es"));
    rememberLanguage(QStringLiteral("es"));
    qputenv("STILLWIRE_LANGUAGE", "en");
    EXPECT_EQ(languageWanted(), QStringLiteral("en"));
    qputenv("STILLWIRE_LANGUAGE", "xx");
    EXPECT_EQ(languageWanted(), QStringLiteral("es")); // what nobody speaks does not count
    qunsetenv("STILLWIRE_LANGUAGE");
    EXPECT_EQ(languageWanted(), QStringLiteral("es"));
    QSettings().clear();
}

} // namespace
} // namespace stillwire
