// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/announcer.hpp"

#include "app/window/words.hpp"

#include <algorithm>
#include <utility>

#include <QAccessible>

namespace stillwire {

Announcer::Announcer(QWidget& speaks) : QObject(&speaks), speaks_(speaks) {}

void Announcer::begin() {
    prompt_.clear();
    state_.clear();
    verdict_.clear();
    dropouts_ = 0;
}

void Announcer::tell(const QString& words) {
    speaks_.setAccessibleName(words);
    QAccessibleEvent alert(&speaks_, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
    emit told(words);
}

void Announcer::hear(const Scene& scene, bool verdictHidden) {
    const SessionSnapshot& snapshot = *scene.snapshot;
    const Prompt& prompt = snapshot.prompt;
    const Findings& findings = *snapshot.findings;
    const QString asked =
        snapshot.guided ? say(prompt.title) + QStringLiteral(". ") + say(prompt.instruction) : QString();
    if (asked != std::exchange(prompt_, asked) && snapshot.guided) tell(asked);
    const auto dropouts =
        static_cast<std::size_t>(std::count_if(findings.excursions.begin(), findings.excursions.end(),
                                               [](const Excursion& e) { return e.kind == ExcursionKind::dropout; }));
    const StateWord word = stateWord(snapshot);
    const bool dropped = dropouts > dropouts_;
    dropouts_ = dropouts;
    // A dropout is told each time, though the word that stands for it stays; any other state when it changes.
    if (dropped)
        tell(tr("Dropout %1: %2").arg(dropouts).arg(word.detail));
    else if (word.word != state_ && word.state != WireState::dropped)
        tell(word.word + QStringLiteral(", ") + word.detail);
    state_ = word.word;
    const QString verdict = verdictHidden ? QString() : verdictWords(findings.verdict);
    const bool over = prompt.finished || snapshot.link == LinkState::ended;
    if (verdict != std::exchange(verdict_, verdict) && !verdict.isEmpty())
        tell((over ? tr("Verdict: %1") : tr("So far: %1")).arg(verdict));
}

} // namespace stillwire
