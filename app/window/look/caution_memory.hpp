// SPDX-License-Identifier: GPL-3.0-or-later
// Which cautions a person has had before them in an earlier step: those are folded to a line, new ones stand large.
#pragma once

#include "core/domain/step.hpp"

#include <optional>
#include <set>

#include <QStringList>

namespace stillwire {

class CautionMemory {
public:
    void reset() { *this = CautionMemory{}; }
    // The cautions of the step in hand; what an earlier step showed is not new.
    void take(const std::optional<Step>& step, const QStringList& cautions) {
        if (step != step_) {
            known_.insert(shown_.begin(), shown_.end());
            shown_.clear();
            step_ = step;
        }
        fresh_.clear();
        for (const QString& caution : cautions) {
            shown_.insert(caution);
            if (known_.count(caution) == 0) fresh_ << caution;
        }
        all_ = cautions;
    }
    [[nodiscard]] const QStringList& fresh() const { return fresh_; }
    [[nodiscard]] const QStringList& all() const { return all_; }

private:
    std::optional<Step> step_;
    std::set<QString> known_, shown_;
    QStringList fresh_, all_;
};

} // namespace stillwire
