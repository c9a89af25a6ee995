// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/meter_line.hpp"

#include "meters/link/clock.hpp"
#include "meters/session/log.hpp"

#include <algorithm>

namespace stillwire {

namespace {

using namespace std::chrono_literals;

constexpr Time kRetry = 500ms;   // of a lost port: it is back about 0.4 s after the plug
constexpr int kReadsInARow = 64; // then asks are looked at
constexpr int kMostRefusals = 8; // entries of an error queue that are read in a row

} // namespace

MeterLine::MeterLine(MeterPort port)
    : link_(std::move(port.link)), decoder_(makeDecoder(port.meter)), settings_(port.meter.link),
      watch_(link_->name(), port.meter), poller_(port.meter.link), realClock_(link_->descriptor() >= 0) {}

Time MeterLine::wait(Time longest) const {
    if (realClock_) return lost_ || !poller_.active() ? longest : std::min(longest, poller_.due(now()) - now());
    const Time due = link_->nextDue();
    return due >= Time(0) ? std::min(longest, due) : longest;
}

bool MeterLine::serve(Listener& listener) {
    if (realClock_ && link_->descriptor() < 0) {
        tryAgain(listener);
        return true;
    }
    if (poller_.shouldAsk(now())) ask();
    // A link with its own clock gives one event at a time, so that the procedure sees each.
    const int rounds = realClock_ ? kReadsInARow : 1;
    for (int round = 0; round < rounds; ++round) {
        const LinkEvent event = link_->read(buffer_);
        switch (event.kind) {
        case LinkEvent::Kind::bytes: takeBytes(listener, event.bytes, event.arrived - zero_); break;
        case LinkEvent::Kind::nothing: return true;
        case LinkEvent::Kind::lost: lose(listener, event.arrived - zero_); return true;
        case LinkEvent::Kind::ended: return false;
        }
    }
    return true;
}

void MeterLine::takeBytes(Listener& listener, std::size_t count, Time arrived) {
    // A meter sends a frame in one go: what comes right after the opening may be the rest of one begun before.
    if (fresh_ && realClock_ && !poller_.active() && arrived - openedAt_ < 50ms) decoder_->beginMidStream();
    fresh_ = false;
    if (lost_) comeBack(listener); // a simulated cable has no port to open
    watch_.bytesCame(arrived);
    listener.inputBytes(*this, std::span(buffer_).first(count), arrived);
    const std::size_t dropped = decoder_->droppedBytes();
    decoded_.clear();
    decoder_->push(std::span(buffer_).first(count), arrived, decoded_);
    const bool garbage = decoder_->droppedBytes() != dropped;
    if (garbage) {
        watch_.complained(decoder_->lastComplaint());
        listener.inputChanged(false);
    }
    const std::optional<Answer> answer = decoder_->takeAnswer();
    if (!decoded_.empty() || garbage || answer) answered();
    if (answer) heed(*answer);
    for (const Reading& reading : decoded_) {
        watch_.readingCame(reading, decoder_->notVolts());
        listener.inputReading(*this, reading);
    }
}

// Whatever came is the answer to what was asked.
void MeterLine::answered() {
    poller_.answered();
    if (!asking_) return;
    asking_ = false;
    questions_.pop_front();
    poller_.restart(now());
}

// Something that is no reading: who the meter is, or what it refused.
void MeterLine::heed(const Answer& answer) {
    if (answer.kind == Answer::Kind::identity) return logInfo("on " + link_->name() + " answers " + answer.text);
    if (answer.code == 0) {
        refusals_ = 0;
        return;
    }
    logWarning("the meter on " + link_->name() + " refuses: " + answer.text);
    watch_.refused(answer.text);
    // There may be more where that came from.
    if (++refusals_ < kMostRefusals && !settings_.errorCommand.empty()) questions_.push_front(settings_.errorCommand);
}

void MeterLine::lose(Listener& listener, Time at) {
    if (lost_) return;
    lost_ = true;
    logWarning("lost " + link_->name());
    watch_.lost(at);
    listener.inputLost(*this, at);
    decoder_->reset();
    retryAt_ = awakeTime() + kRetry;
}

void MeterLine::comeBack(Listener& listener) {
    lost_ = false;
    openedAt_ = now();
    logInfo("back on " + link_->name());
    greet();
    listener.inputChanged(true);
}

void MeterLine::tryAgain(Listener& listener) {
    if (awakeTime() < retryAt_) return;
    retryAt_ = awakeTime() + kRetry;
    if (const Status opened = link_->open(); !opened) {
        watch_.stillLost(opened.error().what);
        return;
    }
    comeBack(listener);
}

void MeterLine::slept(double seconds_s) {
    watch_.slept(seconds_s, now());
    decoder_->reset();
    decoder_->beginMidStream();
}

void MeterLine::greet() {
    watch_.opened(link_->name(), now());
    fresh_ = true;
    for (const std::string& command : settings_.startCommands) send(command);
    questions_.clear();
    asking_ = false;
    refusals_ = 0;
    // A simulated link hears nothing; its meter sends by itself.
    if (realClock_ && poller_.active())
        for (const std::string& question : {settings_.identifyCommand, settings_.errorCommand})
            if (!question.empty()) questions_.push_back(question);
    poller_.restart(now());
}

void MeterLine::ask() {
    // Still owing means overdue. A question nobody answers is let go; after a poll without an answer the meter may
    // say why.
    if (poller_.owes() && asking_)
        questions_.pop_front();
    else if (poller_.owes() && questions_.empty() && realClock_ && !settings_.errorCommand.empty())
        questions_.push_back(settings_.errorCommand);
    asking_ = !questions_.empty();
    send(asking_ ? questions_.front() : settings_.pollCommand);
    poller_.asked(now());
}

void MeterLine::send(const std::string& command) {
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(command.data());
    if (const Status sent = link_->write({bytes, command.size()}); !sent) watch_.complained(sent.error().what);
}

void MeterLine::leave() {
    for (const std::string& command : settings_.leaveCommands) send(command);
}

} // namespace stillwire
