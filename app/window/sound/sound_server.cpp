// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/sound/sound_server.hpp"

#include <algorithm>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <QFile>

namespace stillwire {

// The variables and their order are those of the client library's manual page (pulse-client.conf, "default-server").
std::optional<QString> soundServerSocket() {
    const QString named = qEnvironmentVariable("PULSE_SERVER");
    if (named.startsWith(QLatin1String("unix:"))) return named.mid(5);
    if (named.startsWith(QLatin1Char('/'))) return named;
    if (!named.isEmpty()) return {}; // over the network, or several
    if (const QString folder = qEnvironmentVariable("PULSE_RUNTIME_PATH"); !folder.isEmpty())
        return folder + QStringLiteral("/native");
    if (const QString folder = qEnvironmentVariable("XDG_RUNTIME_DIR"); !folder.isEmpty())
        return folder + QStringLiteral("/pulse/native");
    return {};
}

bool answers(const QString& socket) {
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    const QByteArray path = QFile::encodeName(socket);
    if (path.size() >= static_cast<qsizetype>(sizeof address.sun_path)) return false;
    std::copy(path.begin(), path.end(), address.sun_path);
    const int descriptor = ::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0);
    if (descriptor < 0) return false;
    const bool there = connect(descriptor, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0;
    close(descriptor);
    return there;
}

} // namespace stillwire
