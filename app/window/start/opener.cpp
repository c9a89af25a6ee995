// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/opener.hpp"

#include <QFileInfo>
#include <QLocale>

namespace stillwire {
namespace {

constexpr qint64 kQuick_bytes = 1'500'000; // an hour at four readings a second is a third of it

} // namespace

Opener::Opener(Doors& doors, QObject* parent) : QObject(parent), doors_(doors) {
    pool_.setMaxThreadCount(1);
    timer_.setInterval(100);
    connect(&timer_, &QTimer::timeout, this, &Opener::tell);
}

Opener::~Opener() {
    giveUp();
    pool_.waitForDone();
}

bool Opener::isLong(const Way& way) {
    return way.kind == Way::Kind::capture && QFileInfo(way.path).size() > kQuick_bytes;
}

void Opener::open(const Way& way) {
    const int turn = ++turn_;
    const QFileInfo file(way.path);
    what_ = tr("Reading %1, %2").arg(file.fileName(), QLocale().formattedDataSize(file.size()));
    reading_ = std::make_shared<Reading>();
    timer_.start();
    tell();
    Way told = way;
    told.told = [reading = reading_](double share) {
        reading->share = share;
        return !reading->givenUp;
    };
    pool_.start([this, way, told, turn] {
        auto result = std::make_shared<Result<Opened>>(doors_.open(told));
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
    if (reading_) reading_->givenUp = true;
    timer_.stop();
}

void Opener::tell() {
    const double share = reading_->share;
    emit going(tr("%1: %2 %. Esc gives it up.").arg(what_).arg(static_cast<int>(100 * share)), share);
}

} // namespace stillwire
