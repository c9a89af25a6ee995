// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/sound_server.hpp"

#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

class Server : public ::testing::Test {
protected:
    void SetUp() override {
        for (const char* name : names) before.push_back(qgetenv(name));
        for (const char* name : names) qunsetenv(name);
    }
    void TearDown() override {
        for (std::size_t i = 0; i < before.size(); ++i)
            before[i].isNull() ? qunsetenv(names[i]) : qputenv(names[i], before[i]);
    }
    static constexpr const char* names[] = {"PULSE_SERVER", "PULSE_RUNTIME_PATH", "XDG_RUNTIME_DIR"};
    std::vector<QByteArray> before;
};

TEST_F(Server, IsWhereTheEnvironmentNamesIt) {
    EXPECT_EQ(soundServerSocket(), std::nullopt);
    qputenv("XDG_RUNTIME_DIR", "/run/user/7");
    EXPECT_EQ(soundServerSocket(), QString("/run/user/7/pulse/native"));
    qputenv("PULSE_RUNTIME_PATH", "/tmp/p");
    EXPECT_EQ(soundServerSocket(), QString("/tmp/p/native"));
    qputenv("PULSE_SERVER", "unix:/tmp/q/native");
    EXPECT_EQ(soundServerSocket(), QString("/tmp/q/native"));
    qputenv("PULSE_SERVER", "/tmp/r");
    EXPECT_EQ(soundServerSocket(), QString("/tmp/r"));
    for (const char* elsewhere : {"tcp:shop:4713", "shop", "{0123}unix:/tmp/q tcp:shop"}) {
        qputenv("PULSE_SERVER", elsewhere);
        EXPECT_EQ(soundServerSocket(), std::nullopt) << elsewhere;
    }
}

TEST_F(Server, AnswersWhileSomebodyListensAndNotForASocketLeftBehind) {
    const QTemporaryDir folder;
    const QString path = folder.filePath("native");
    EXPECT_FALSE(answers(path));
    const int listening = socket(AF_UNIX, SOCK_STREAM, 0);
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    qstrncpy(address.sun_path, QFile::encodeName(path).constData(), sizeof address.sun_path);
    ASSERT_EQ(bind(listening, reinterpret_cast<const sockaddr*>(&address), sizeof address), 0);
    ASSERT_EQ(listen(listening, 1), 0);
    EXPECT_TRUE(answers(path));
    close(listening);
    EXPECT_TRUE(QFile::exists(path));
    EXPECT_FALSE(answers(path));
    EXPECT_FALSE(answers(QString(300, 'x')));
}

} // namespace
} // namespace stillwire
