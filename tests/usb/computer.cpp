// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/usb/computer.hpp"

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <fstream>
#include <poll.h>
#include <sstream>
#include <sys/socket.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace stillwire {

namespace {

using Clock = std::chrono::steady_clock;

bool ready(int descriptor, short events, int milliseconds) {
    pollfd waiting{descriptor, events, 0};
    return poll(&waiting, 1, milliseconds) > 0;
}

} // namespace

bool Adapter::plug() {
    pull();
    socket_ = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    if (path_.size() >= sizeof address.sun_path) return false;
    std::memcpy(address.sun_path, path_.c_str(), path_.size() + 1);
    if (connect(socket_, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0) return true;
    pull();
    return false;
}

void Adapter::pull() {
    if (socket_ >= 0) close(socket_);
    socket_ = -1;
}

bool Adapter::send(std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        if (socket_ < 0 || !ready(socket_, POLLOUT, 10'000)) return false;
        const ssize_t sent = ::send(socket_, bytes.data(), bytes.size(), MSG_DONTWAIT | MSG_NOSIGNAL);
        if (sent <= 0) return false;
        bytes = bytes.subspan(static_cast<std::size_t>(sent));
    }
    return true;
}

std::string Adapter::receive(int milliseconds) {
    char bytes[256];
    if (socket_ < 0 || !ready(socket_, POLLIN, milliseconds)) return {};
    const ssize_t got = recv(socket_, bytes, sizeof bytes, 0);
    return got > 0 ? std::string(bytes, static_cast<std::size_t>(got)) : std::string();
}

Computer::Computer(const std::string& folder) : ours("ours.sock"), other("other.sock"), folder_(folder) {
    // Paths of sockets are short: everything is named from inside the folder.
    if (chdir(folder.c_str()) != 0) return;
    std::remove("trace");
    const char* const arguments[] = {"qemu-system-x86_64",
                                     "-accel",
                                     "tcg",
                                     "-M",
                                     "pc",
                                     "-m",
                                     "384",
                                     "-smp",
                                     "1",
                                     "-nodefaults",
                                     "-no-user-config",
                                     "-no-reboot",
                                     "-display",
                                     "none",
                                     "-serial",
                                     "stdio",
                                     "-kernel",
                                     "kernel/vmlinux",
                                     "-initrd",
                                     "initramfs",
                                     "-append",
                                     "console=ttyS0 quiet loglevel=1 panic=-1",
                                     "-chardev",
                                     "socket,id=ours,path=ours.sock,server=on,wait=off",
                                     "-chardev",
                                     "socket,id=other,path=other.sock,server=on,wait=off",
                                     "-device",
                                     "qemu-xhci,id=hc",
                                     "-device",
                                     "usb-serial,chardev=ours,serial=OURS,bus=hc.0,port=1",
                                     "-device",
                                     "usb-serial,chardev=other,serial=OTHER,bus=hc.0,port=2",
                                     "-trace",
                                     "usb_serial_*",
                                     "-D",
                                     "trace",
                                     nullptr};
    int in[2], out[2];
    if (pipe2(in, O_CLOEXEC) != 0 || pipe2(out, O_CLOEXEC) != 0) return;
    process_ = fork();
    if (process_ == 0) {
        dup2(in[0], STDIN_FILENO);
        dup2(out[1], STDOUT_FILENO);
        execvp(arguments[0], const_cast<char* const*>(arguments));
        _exit(127);
    }
    close(in[0]);
    close(out[1]);
    in_ = in[1];
    out_ = out[0];
}

Computer::~Computer() {
    if (process_ > 0) {
        kill(process_, SIGKILL);
        waitpid(process_, nullptr, 0);
    }
    if (in_ >= 0) close(in_);
    if (out_ >= 0) close(out_);
}

bool Computer::readLine(std::string& line, int milliseconds) {
    const auto end = Clock::now() + std::chrono::milliseconds(milliseconds);
    for (;;) {
        if (const auto at = pending_.find('\n'); at != std::string::npos) {
            line = pending_.substr(0, at);
            pending_.erase(0, at + 1);
            if (!line.empty() && line.back() == '\r') line.pop_back();
            return true;
        }
        const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
        if (left <= 0 || !ready(out_, POLLIN, static_cast<int>(left))) return false;
        char bytes[4096];
        const ssize_t got = read(out_, bytes, sizeof bytes);
        if (got <= 0) return false;
        pending_.append(bytes, static_cast<std::size_t>(got));
    }
}

bool Computer::boot() {
    std::string line;
    while (readLine(line, 120'000))
        if (line.find("@ready") != std::string::npos) return true;
    return false;
}

Computer::Answer Computer::run(const std::string& command, int seconds) {
    const std::string typed = command + "\n";
    if (write(in_, typed.data(), typed.size()) != static_cast<ssize_t>(typed.size())) return {};
    Answer answer;
    std::string line;
    while (readLine(line, seconds * 1000)) {
        if (line.rfind("@done ", 0) == 0) {
            answer.status = std::stoi(line.substr(6));
            return answer;
        }
        answer.out += line + "\n";
    }
    return {-1, answer.out};
}

bool Computer::until(const std::string& command, int seconds) {
    const std::string limit = std::to_string(seconds * 20);
    return run("i=0; until " + command + "; do i=$((i+1)); [ $i -lt " + limit +
                   " ] || break; usleep 50000; done; [ $i -lt " + limit + " ]",
               10 * seconds)
               .status == 0;
}

std::vector<std::string> Computer::traced() {
    std::ifstream file("trace", std::ios::binary);
    file.seekg(static_cast<std::streamoff>(tracedBytes_));
    std::vector<std::string> out;
    for (std::string line; std::getline(file, line) && !file.eof(); tracedBytes_ += line.size() + 1)
        out.push_back(line);
    return out;
}

} // namespace stillwire
