// Files of an index on disk: made sure of, replaced in one step, locked against a second writer.
#pragma once

#include <string>
#include <string_view>

#include "indexer/fault/fault.h"
#include "indexer/keeping/whole_file.h"

namespace gallipot {

/// Held by the one process that may write an index. Let go on destruction, also when the process dies.
class WritingLock {
 public:
  /// Takes the lock of an index folder, which must exist. Faults: another process writes this index just now, or the
  /// folder cannot be written in.
  static Outcome<WritingLock> take(const std::string& folder);
  WritingLock(WritingLock&& other) noexcept : file_(other.file_) { other.file_ = -1; }
  WritingLock& operator=(WritingLock&&) = delete;
  WritingLock(const WritingLock&) = delete;
  ~WritingLock();

  static constexpr const char* file_name = "writing.lock";

 private:
  explicit WritingLock(int file) : file_(file) {}
  int file_;
};

}  // namespace gallipot
