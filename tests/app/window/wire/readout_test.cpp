// SPDX-License-Identifier: GPL-3.0-or-later
// The number beside its word: whole, its digits apart, in every size of window and in a replay too.
#include "app/window/wire/readout_view.hpp"
#include "tests/app/support/moments.hpp"

#include <algorithm>

#include <QTest>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

// Stretches of columns that hold ink, in the left part of the picture.
int stretches(const QImage& picture, int to, QRgb ground) {
    int found = 0;
    bool inside = false;
    for (int x = 0; x < to; ++x) {
        bool ink = false;
        for (int y = 0; y < picture.height() && !ink; ++y) ink = picture.pixel(x, y) != ground;
        if (ink && !inside) ++found;
        inside = ink;
    }
    return found;
}

class Readout : public ::testing::TestWithParam<QSize> {};

TEST_P(Readout, NoDigitIsClippedAndNoneTouchesAnother) {
    Look look;
    look.fitTo(GetParam());
    const bool narrow = GetParam().width() < 1100;
    for (const int left : narrow ? std::vector{344, 372, 396} : std::vector{396, 440, 480}) { // of the page beside it
        QWidget window;
        window.resize(GetParam());
        window.setStyleSheet("background: white");
        ReadoutView readout(look, &window);
        readout.setGeometry(0, 0, GetParam().width() - look.ipx(left) - look.ipx(54), readout.sizeHint().height());
        auto moment = test::moment(WireState::steady);
        moment->lastVolts_V = 4.888; // the widest digits
        readout.show({moment, test::leverSheet()});
        window.show();
        const QImage picture = readout.grab().toImage().convertToFormat(QImage::Format_RGB32);
        const QRgb ground = picture.pixel(0, 0);
        const double number = readout.numberWidth(readout.digitHeight());
        EXPECT_LE(number, readout.width()) << left;
        // four digits, the point and the unit, each by itself
        EXPECT_EQ(stretches(picture, static_cast<int>(number) + look.ipx(10), ground), 6) << left;
        for (int y = 0; y < picture.height(); ++y) EXPECT_EQ(picture.pixel(0, y), ground) << "clipped at the left";
    }
}

INSTANTIATE_TEST_SUITE_P(Sizes, Readout,
                         ::testing::Values(QSize(960, 600), QSize(1280, 720), QSize(1280, 800), QSize(1366, 705),
                                           QSize(1366, 768), QSize(1920, 1080)));

} // namespace
} // namespace stillwire
