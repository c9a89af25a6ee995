// SPDX-License-Identifier: GPL-3.0-or-later
// Says sentences aloud in the window's language. Built without Qt TextToSpeech, without an engine or without a voice
// for the language, it stays silent, and nothing else changes.
#pragma once

#include <memory>

#include <QLocale>
#include <QObject>

namespace stillwire {

class Voice : public QObject {
    Q_OBJECT
public:
    explicit Voice(QObject* parent = nullptr);
    ~Voice() override;

    void load(const QLocale& locale); // slow, so after the first painted window; it goes on in a thread of its own
    [[nodiscard]] bool available() const;
    void say(const QString& text); // in place of what is being said; before it is loaded: once it is
    void hush();

private:
    struct Engine;
    std::unique_ptr<Engine> engine_;
    QString early_; // said before it was loaded
};

} // namespace stillwire
