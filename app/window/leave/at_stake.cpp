// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/leave/at_stake.hpp"

#include "app/window/words.hpp"

#include <QCoreApplication>
#include <QFileInfo>
#include <QLocale>

namespace stillwire {
namespace {
struct StakeText { // gives the texts of this file a context of their own
    Q_DECLARE_TR_FUNCTIONS(StakeText)
};

QString whereItStops(const SessionSnapshot& now) {
    const Prompt& prompt = now.prompt;
    if (prompt.of <= 0) return StakeText::tr("The led run ends here and cannot be taken up again.");
    return StakeText::tr("The led run ends at step %1 of %2, %3, and cannot be taken up again.")
        .arg(prompt.number)
        .arg(prompt.of)
        .arg(say(prompt.title));
}

QString whatWasToCome(const SessionSnapshot& now) {
    QStringList steps;
    for (const PathEntry& entry : now.path)
        if (entry.outcome == StepOutcome::waiting) steps << shortStepName(entry.step);
    if (steps.isEmpty()) return {};
    return StakeText::tr("Not looked at then: %1.").arg(steps.join(QStringLiteral(", ")));
}

} // namespace

std::optional<AtStake> atStake(const Session& session) {
    const auto now = session.snapshot();
    const bool led = now->guided && session.running() && !now->prompt.finished;
    if (!led && now->pendingBytes == 0) return {};
    AtStake stake;
    stake.unsaved = now->pendingBytes > 0;
    if (led) {
        stake.says << whereItStops(*now);
        if (!now->prompt.wanted.empty())
            stake.says << StakeText::tr("Still wanted in this step: %1.").arg(say(now->prompt.wanted));
        const QString more = whatWasToCome(*now);
        if (!more.isEmpty()) stake.says << more;
    }
    if (stake.unsaved)
        stake.says << StakeText::tr("In memory only, and lost unless it is saved elsewhere: %1 of readings.")
                          .arg(QLocale().formattedDataSize(static_cast<qint64>(now->pendingBytes)));
    if (!now->capturePath.empty())
        stake.says << StakeText::tr("What was recorded is kept: %1, %2 readings.")
                          .arg(QFileInfo(QString::fromStdString(now->capturePath)).fileName())
                          .arg(QLocale().toString(static_cast<qulonglong>(now->findings->readings)));
    return stake;
}

} // namespace stillwire
