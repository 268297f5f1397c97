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

/// A file descriptor, closed when it goes.
struct Descriptor {
  int file = -1;
  ~Descriptor() {
    if (file >= 0) ::close(file);
  }
};

Outcome<bool> bring_one_to_disk(const std::string& path) {
  const Descriptor d{::open(path.c_str(), O_RDONLY | O_CLOEXEC)};
  if (d.file < 0 || ::fsync(d.file) != 0) return cannot_write(path, errno);
  return true;
}

Outcome<bool> write_all(int file, std::string_view bytes, const std::string& path) {
  while (!bytes.empty()) {
    const auto n = ::write(file, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return cannot_write(path, errno);
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

}  // namespace

Outcome<bool> replace_file(const std::string& path, std::string_view bytes) {
  const std::string fresh = path + ".new";
  {
    const Descriptor d{::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666)};
    if (d.file < 0) return cannot_write(fresh, errno);
    if (auto written = write_all(d.file, bytes, fresh); !written) return written;
    if (::fsync(d.file) != 0) return cannot_write(fresh, errno);
  }
  if (::rename(fresh.c_str(), path.c_str()) != 0) return cannot_write(path, errno);
  const auto folder = fs::path(path).parent_path();
  return bring_one_to_disk(folder.empty() ? "." : folder.string());
}

Outcome<bool> bring_to_disk(const std::string& path) {
  std::error_code error;
  if (fs::is_directory(path, error)) {
    for (const auto& entry : fs::recursive_directory_iterator(path, error))
      if (auto done = bring_one_to_disk(entry.path().string()); !done) return done;
    if (error) return cannot_write(path, error.value());
  }
  return bring_one_to_disk(path);
}

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
