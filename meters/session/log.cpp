// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/session/log.hpp"

#include <memory>
#include <mutex>

#include <spdlog/sinks/basic_file_sink.h>
#include <spdlog/spdlog.h>

namespace stillwire {

namespace {

std::mutex mutex;
std::shared_ptr<spdlog::logger> logger; // guarded by mutex

void write(spdlog::level::level_enum level, const std::string& text) {
    const std::lock_guard lock(mutex);
    if (logger) logger->log(level, spdlog::string_view_t(text.data(), text.size()));
}

} // namespace

void openLog(const std::string& path) {
    const std::lock_guard lock(mutex);
    try {
        auto made =
            std::make_shared<spdlog::logger>("stillwire", std::make_shared<spdlog::sinks::basic_file_sink_mt>(path));
        made->set_error_handler([](const std::string&) {}); // a full disk must not make the log speak on stderr
        made->flush_on(spdlog::level::info);
        logger = std::move(made);
    } catch (const spdlog::spdlog_ex&) {
        logger.reset();
    }
}

void logInfo(const std::string& text) { write(spdlog::level::info, text); }
void logWarning(const std::string& text) { write(spdlog::level::warn, text); }

} // namespace stillwire
