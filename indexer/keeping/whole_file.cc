// POSIX files: what std::filesystem cannot do (fsync, flock).
#include "indexer/keeping/whole_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>
#include <thread>

namespace gallipot {
namespace {

namespace fs = std::filesystem;

std::string reason(int error) { return std::generic_category().message(error); }

tl::unexpected<Fault> cannot_write(const std::string& path, int error) {
  return fault("cannot be written: " + reason(error), "see whether the disk is full and who may write here", path);
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

Outcome<std::string> read_whole_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return fault("cannot be read: " + reason(errno), "see whether the file is there and who may read it", path);
  return std::string(std::istreambuf_iterator<char>(in), {});
}

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

Outcome<FileLock> FileLock::take(const std::string& path, const Fault& held) {
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (file < 0) return cannot_write(path, errno);
  FileLock lock(file);
  if (::flock(file, LOCK_EX | LOCK_NB) == 0) return lock;
  if (errno != EWOULDBLOCK) return cannot_write(path, errno);
  return tl::unexpected(held);
}

Outcome<FileLock> FileLock::wait(const std::string& path, const Fault& held, double seconds) {
  constexpr std::chrono::milliseconds pause(20);
  const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
  for (;;) {
    auto lock = take(path, held);
    if (lock || lock.error().what != held.what || std::chrono::steady_clock::now() >= until) return lock;
    std::this_thread::sleep_for(pause);
  }
}

FileLock::~FileLock() {
  if (file_ >= 0) ::close(file_);
}

}  // namespace gallipot
