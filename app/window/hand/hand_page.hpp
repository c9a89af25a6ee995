// SPDX-License-Identifier: GPL-3.0-or-later
// The left page, the hand: the step, its caution, drawing, sentence, pace, what is still wanted, why, and the keys.
#pragma once

#include "app/window/feed.hpp"
#include "app/window/look/caution_memory.hpp"
#include "app/window/look/look.hpp"

#include <vector>

#include <QWidget>

namespace stillwire {

class TextLabel;
class CautionBox;
class DrawingView;
class KeyButton;
class PaceView;
class ProgressLine;

class HandPage : public QWidget {
    Q_OBJECT
public:
    HandPage(const Look& look, const Feed& feed, QWidget* parent = nullptr);
    void show(const Scene& scene);
    void begin() { memory_.reset(); } // another session
    [[nodiscard]] const CautionMemory& cautions() const { return memory_; }

    enum class Room { ample, usual, less, least, bare };
    // Ample: the step and what is wanted are read across the shop. The same in less room: smaller sentences, then
    // closer lines; bare, what the hand does and minds, without picture and reason. The cautions are read from
    // further away where they may be.
    void setRoom(Room room, bool cautionsLarge);
    // Has all that is shown now room in a page of this size?
    [[nodiscard]] bool fits(int width, int height);
    [[nodiscard]] QString takesRoom() const; // what the answer depends on: the same text, the same answer

    [[nodiscard]] const std::vector<Choice>& choices() const { return choices_; }

signals:
    void asked(stillwire::Command command);

private:
    KeyButton* makeButton();
    void showAnswers(const Prompt& prompt);

    void restyle();
    void showWhatHasRoom();

    const Look& look_;
    CautionMemory memory_;
    QString whySays_;
    Room room_ = Room::usual;
    bool cautionsLarge_ = false;
    TextLabel *title_, *count_, *instruction_, *detail_, *wanted_, *why_;
    CautionBox* caution_;
    DrawingView* drawing_;
    PaceView* pace_;
    ProgressLine* progress_;
    std::vector<KeyButton*> answers_; // as many as there are choices are shown
    std::vector<Choice> choices_;
};

} // namespace stillwire
