// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/capture_place.hpp"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Place : public ::testing::Test {
protected:
    void SetUp() override { before = qgetenv("XDG_DATA_HOME"); }
    void TearDown() override { qputenv("XDG_DATA_HOME", before); }
    QByteArray before;
    QTemporaryDir folder;
};

TEST_F(Place, IsTheDataFolderAndSaysNothing) {
    qputenv("XDG_DATA_HOME", folder.path().toUtf8());
    const CapturePlace place = newCapturePlace("Drive pedal, left");
    EXPECT_EQ(place.warning, QString());
    const QFileInfo file(QString::fromStdString(place.path));
    EXPECT_TRUE(file.path().startsWith(folder.path()));
    EXPECT_TRUE(file.fileName().endsWith("-drive-pedal--left.csv")) << place.path;
    EXPECT_TRUE(file.dir().exists());
    EXPECT_TRUE(file.dir().isEmpty()); // the probe is gone
}

// A file in the folder's place refuses it to root too; a disk that is full or read-only answers alike.
TEST_F(Place, IsAnotherThatIsSaidIfTheDataFolderTakesNothing) {
    QFile inTheWay(folder.filePath("data"));
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    qputenv("XDG_DATA_HOME", inTheWay.fileName().toUtf8());
    const CapturePlace place = newCapturePlace("pedal");
    EXPECT_FALSE(QString::fromStdString(place.path).startsWith(folder.path()));
    EXPECT_TRUE(place.warning.contains(inTheWay.fileName())) << place.warning.toStdString();
    EXPECT_TRUE(place.warning.contains(QFileInfo(QString::fromStdString(place.path)).path()));
    QFile made(QString::fromStdString(place.path));
    EXPECT_TRUE(made.open(QIODevice::WriteOnly));
    made.remove();
}

} // namespace
} // namespace stillwire
