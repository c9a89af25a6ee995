// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/language/say.hpp"

#include <QCoreApplication>

namespace stillwire {

QString say(const Sentence& sentence) {
    if (sentence.empty()) return {};
    const QString pattern = QCoreApplication::translate("core", sentence.pattern);
    std::vector<std::string> filled;
    filled.reserve(sentence.arguments.size());
    for (const Argument& argument : sentence.arguments) {
        switch (argument.kind) {
        case Argument::Kind::figure: filled.push_back(argument.text); break;
        case Argument::Kind::name: filled.push_back(sayName(argument.text).toStdString()); break;
        case Argument::Kind::sentence: filled.push_back(say(argument.sentence.front()).toStdString()); break;
        }
    }
    return QString::fromStdString(fill(pattern.toStdString(), filled));
}

QString sayName(const std::string& name) { return QCoreApplication::translate("names", name.c_str()); }

} // namespace stillwire
