// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/teller.hpp"

#include "app/window/words.hpp"

#include <QCoreApplication>

namespace stillwire {
namespace {
struct TellerText {
    Q_DECLARE_TR_FUNCTIONS(TellerText)
};
} // namespace

QString Teller::hear(const Scene& scene) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Prompt& prompt = snapshot.prompt;
    if (!snapshot.guided) return {};
    if (prompt.stopNow) {
        if (stopped_) return {};
        stopped_ = true;
        return say(prompt.instruction) + QLatin1Char(' ') + say(prompt.why);
    }
    if (prompt.finished) {
        if (over_) return {};
        over_ = true;
        return TellerText::tr("The run is over. Verdict: %1.").arg(verdictWords(snapshot.findings->verdict));
    }
    over_ = stopped_ = false;
    return sayNew(prompt);
}

QString Teller::sayNew(const Prompt& prompt) {
    const QString main = say(prompt.instruction);
    const std::string section = prompt.asked ? prompt.asked->place.area : std::string();
    if (main == said_) {
        if (section.empty() || section == section_) return {};
        section_ = section;
        return say(prompt.pose);
    }
    said_ = main;
    section_ = section;
    QStringList all;
    for (const Sentence& caution : prompt.cautions) {
        const QString words = say(caution);
        if (cautions_.insert(words).second) all << words;
    }
    all << main;
    for (std::size_t i = 0; i < prompt.choices.size(); ++i)
        all << TellerText::tr("%1: %2.").arg(i + 1).arg(say(prompt.choices[i].says));
    return all.join(QLatin1Char(' '));
}

} // namespace stillwire
