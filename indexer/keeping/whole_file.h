// How is a file of the cook's kept safe? Read whole, replaced in one step, brought to disk, locked against a second
// writer. POSIX.
#pragma once

#include <string>
#include <string_view>

#include "indexer/fault/fault.h"

namespace gallipot {

/// The bytes of a file. Faults: not there, not readable.
Outcome<std::string> read_whole_file(const std::string& path);

/// Puts `bytes` in the place of the file `path`: written beside it, brought to disk, then renamed over it, and the
/// folder brought to disk. A reader sees the old file or the new one, whenever the power fails. Who may write one file
/// at the same time as others holds its FileLock.
Outcome<bool> replace_file(const std::string& path, std::string_view bytes);

/// Brings a file, or a folder with all that is in it, to disk.
Outcome<bool> bring_to_disk(const std::string& path);

/// The lock on a file that is read, changed and replaced: held by one process at a time, let go on destruction, also
/// when the process dies. It lies in a file of its own, since the file that it guards is replaced.
class FileLock {
 public:
  /// Takes the lock in the file `path`, which is made if it is not there. Faults: the file cannot be made; `held` where
  /// another process has it.
  static Outcome<FileLock> take(const std::string& path, const Fault& held);
  /// The same, but waits up to so many seconds for the other to have done.
  static Outcome<FileLock> wait(const std::string& path, const Fault& held, double seconds);
  FileLock(FileLock&& other) noexcept : file_(other.file_) { other.file_ = -1; }
  FileLock& operator=(FileLock&&) = delete;
  FileLock(const FileLock&) = delete;
  ~FileLock();

 private:
  explicit FileLock(int file) : file_(file) {}
  int file_;
};

}  // namespace gallipot
