// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/file_error.hpp"

#include <cerrno>
#include <system_error>

namespace stillwire {

namespace {

struct DeedSays {
    const char* forbidden;
    const char* failed;
};

DeedSays saysOf(Deed deed) {
    switch (deed) {
    case Deed::open: return {"not allowed to open it", "cannot open it: %1"};
    case Deed::read: return {"not allowed to read it", "cannot read it: %1"};
    case Deed::create: return {"not allowed to create it", "cannot create it: %1"};
    case Deed::write: return {"not allowed to write it", "cannot write it: %1"};
    case Deed::save: return {"not allowed to save it", "cannot save it: %1"};
    case Deed::rewrite: break;
    }
    return {"not allowed to write a new file beside it", "cannot write it anew: %1"};
}

} // namespace

Error fileError(const std::string& path, Deed deed, int code) {
    const auto say = [&](Sentence what, Sentence mend) {
        return Error{Error::Kind::badInput, path, 0, std::move(what), std::move(mend)};
    };
    switch (code) {
    case ENOENT: return say("there is no such file or folder", "check the name and the folder");
    case EACCES:
    case EPERM: return say({saysOf(deed).forbidden, {}}, "change its permissions or use another folder");
    case EISDIR: return say("is a folder", "give a file");
    case EEXIST: return say("exists already and is never overwritten", "choose another name");
    case ENOSPC:
    case EDQUOT: return say("the disk is full", "free some space or go on in another folder");
    case EFBIG: return say("the file may not grow any further", "go on in another folder");
    case EROFS: return say("the disk is read-only", "use another folder");
    case ENOTDIR: return say("a part of the path is no folder", "check the path");
    case ENAMETOOLONG: return say("the name is too long", "choose a shorter one");
    case EIO: return say("the disk fails", "use another disk and keep this one for rescue");
    default: return say({saysOf(deed).failed, {std::generic_category().message(code)}}, "try another file or folder");
    }
}

} // namespace stillwire
