// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/feed.hpp"

namespace stillwire {
namespace {

constexpr int kPoll_ms = 60;   // sooner than an eye tells apart, seldom enough to cost nothing
constexpr int kQuiet_ms = 250; // for what only goes on: seconds left, silence

// The session ticks more often than the meter reads. A reading, a mark and trouble are shown at once.
bool isNews(const SessionSnapshot& a, const SessionSnapshot& b) {
    return a.trace.size() != b.trace.size() || a.marks.size() != b.marks.size() || a.link != b.link ||
           a.prompt.finished != b.prompt.finished || a.prompt.stopNow != b.prompt.stopNow ||
           a.linkSays != b.linkSays || a.recorderSays != b.recorderSays;
}

SnapshotPtr nothingYet() {
    auto snapshot = std::make_shared<SessionSnapshot>();
    snapshot->findings = std::make_shared<Findings>();
    snapshot->lastVolts_V = std::numeric_limits<double>::quiet_NaN();
    return snapshot;
}

} // namespace

Feed::Feed(QObject* parent) : QObject(parent), scene_{nothingYet(), nullptr} {
    timer_.setInterval(kPoll_ms);
    connect(&timer_, &QTimer::timeout, this, &Feed::poll);
}

Feed::~Feed() = default;

void Feed::attach(std::unique_ptr<Session> session, std::shared_ptr<const Sheet> sheet) {
    session_ = std::move(session);
    scene_ = {session_->snapshot(), std::move(sheet)};
    since_.start();
    timer_.start();
    emit changed(scene_);
}

std::unique_ptr<Session> Feed::detach() {
    timer_.stop();
    scene_ = {nothingYet(), nullptr};
    return std::move(session_);
}

double Feed::nowSeconds() const {
    const double since =
        since_.isValid() && session_ && session_->running() ? static_cast<double>(since_.elapsed()) * 1e-3 : 0.0;
    // A session that has stopped telling stands still on screen too.
    return toSeconds(scene_.snapshot->now) + std::min(since, 1.0);
}

void Feed::poll() {
    if (!session_) return;
    SnapshotPtr snapshot = session_->snapshot();
    if (snapshot->sequence == scene_.snapshot->sequence) return;
    if (!isNews(*snapshot, *scene_.snapshot) && since_.elapsed() < kQuiet_ms) return;
    scene_.snapshot = std::move(snapshot);
    since_.restart();
    emit changed(scene_);
}

} // namespace stillwire
