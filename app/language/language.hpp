// SPDX-License-Identifier: GPL-3.0-or-later
// The languages of the window and the report. English is in the source; the others are compiled in from
// resources/translations. Volts keep their point in all of them, as meters show it and captures hold it.
#pragma once

#include <memory>
#include <vector>

#include <QString>

class QCoreApplication;

namespace stillwire {

struct Language {
    QString code; // "es"
    QString name; // in itself: "Español"
};
[[nodiscard]] const std::vector<Language>& languages(); // English first

void nameProgram(); // organisation and application, under which settings and recordings are kept

// The variable STILLWIRE_LANGUAGE, else what was remembered, else the system's, if it is one of ours; else "en".
// Needs the names of organisation and application to be set.
[[nodiscard]] QString languageWanted();
void rememberLanguage(const QString& code);

// From now on, in place of the one before: our texts and Qt's own. Needs a QCoreApplication.
void speak(const QString& code);
[[nodiscard]] QString languageSpoken();

// For a program without a window: what tr() needs, and the language that is wanted.
class Speaking {
public:
    Speaking();
    ~Speaking();
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;

private:
    std::unique_ptr<QCoreApplication> application_; // null where there is one already
};

} // namespace stillwire
