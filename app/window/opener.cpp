// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/opener.hpp"

#include <QFileInfo>
#include <QLocale>

namespace stillwire {
namespace {

constexpr qint64 kQuick_bytes = 1'500'000; // an hour at four readings a second is a third of it

} // namespace

Opener::Opener(Doors& doors, QObject* parent) : QObject(parent), doors_(doors) {
    pool_.setMaxThreadCount(1);
    timer_.setInterval(1000);
    connect(&timer_, &QTimer::timeout, this, &Opener::tell);
}

Opener::~Opener() { pool_.waitForDone(); }

bool Opener::isLong(const Way& way) {
    return way.kind == Way::Kind::capture && QFileInfo(way.path).size() > kQuick_bytes;
}

void Opener::open(const Way& way) {
    const int turn = ++turn_;
    const QFileInfo file(way.path);
    what_ = tr("Reading %1, %2").arg(file.fileName(), QLocale().formattedDataSize(file.size()));
    since_.start();
    timer_.start();
    tell();
    pool_.start([this, way, turn] {
        auto result = std::make_shared<Result<Opened>>(doors_.open(way));
        QMetaObject::invokeMethod(
            this,
            [this, way, turn, result] {
                if (turn != turn_) return;
                timer_.stop();
                emit opened(result, way);
            },
            Qt::QueuedConnection);
    });
}

void Opener::giveUp() {
    ++turn_;
    timer_.stop();
}

void Opener::tell() { emit going(tr("%1, for %2 s. Esc gives it up.").arg(what_).arg(since_.elapsed() / 1000)); }

} // namespace stillwire
