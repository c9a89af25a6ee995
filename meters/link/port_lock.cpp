// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/link/port_lock.hpp"

#include <cerrno>
#include <csignal>
#include <fstream>
#include <sys/file.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>

namespace stillwire {

std::string lockFileHolder(const std::string& port, const std::string& directory) {
    std::ifstream file(directory + "/LCK.." + port.substr(port.rfind('/') + 1));
    pid_t process = 0;
    if (!(file >> process) || process <= 0) return {};
    if (kill(process, 0) != 0 && errno == ESRCH) return {}; // left behind by one that ended
    return "process " + std::to_string(process);
}

bool claimPort(int descriptor) {
    struct stat status {};
    // Each open of the pty multiplexer is a terminal of its own: nothing to share, and one lock for all of them would
    // lie.
    const bool multiplexer = fstat(descriptor, &status) == 0 && status.st_rdev == makedev(5, 2);
    if (!multiplexer && flock(descriptor, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) return false;
    ioctl(descriptor, TIOCEXCL);
    return true;
}

} // namespace stillwire
