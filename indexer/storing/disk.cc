// POSIX files: what std::filesystem cannot do (fsync, flock).
#include "indexer/storing/disk.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>

namespace gallipot {
namespace {

namespace fs = std::filesystem;

std::string reason(int error) { return std::generic_category().message(error); }

tl::unexpected<Fault> cannot_write(const std::string& path, int error) {
  return fault("the index cannot be written: " + reason(error), "see whether the disk is full and who may write here",
               path);
}

}  // namespace

Outcome<WritingLock> WritingLock::take(const std::string& folder) {
  const auto path = (fs::path(folder) / file_name).string();
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (file < 0) return cannot_write(path, errno);
  WritingLock lock(file);
  if (::flock(file, LOCK_EX | LOCK_NB) == 0) return lock;
  if (errno != EWOULDBLOCK) return cannot_write(path, errno);
  return fault("this index is being written by another run", "wait until that is done and index again", folder);
}

WritingLock::~WritingLock() {
  if (file_ >= 0) ::close(file_);
}

}  // namespace gallipot
