// An index folder while it is being written: what was in it, the lock on it, and how the new takes the old one's place.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/keeping/whole_file.h"
#include "indexer/storing/manifest.h"

namespace gallipot {

/// Takes the lock of an index folder, which must exist. Faults: another process writes this index just now, or the
/// folder cannot be written in.
Outcome<FileLock> take_writing_lock(const std::string& folder);

/// Until `finish` has returned well nothing of the index in the folder has changed; what was built by then is cleared
/// away on destruction.
class Site {
 public:
  /// Makes the folder if it is not there.
  explicit Site(std::string folder) : folder_(std::move(folder)) {}
  Site(const Site&) = delete;
  Site& operator=(const Site&) = delete;
  ~Site();

  /// Takes the lock, reads the manifest, clears away what an interrupted run has left, makes the folder `building`.
  /// Faults: a folder of other things, an index of another version or damaged, another run is writing.
  Outcome<bool> begin();

  /// The manifest of the index that is there; empty where there is none.
  const Manifest& old() const { return old_; }
  /// A folder for the shards.
  std::string building() const;

  /// Makes the new generation of what is kept of the old one and the new shards (paths in `building`): merged into one
  /// database, or named together by a stub file. Then writes the manifest and removes the old generation.
  /// `replaced`: books of the old manifest that the shards hold anew. Throws Xapian::Error.
  Outcome<bool> finish(std::vector<std::string> shards, Manifest manifest, const std::vector<std::string>& replaced,
                       bool merged);

 private:
  std::string in_folder(const std::string& name) const;
  Outcome<std::vector<std::string>> with_kept(std::vector<std::string> shards, const std::vector<std::string>& replaced,
                                              bool merged) const;

  std::string folder_;
  bool made_ = false;
  std::optional<FileLock> lock_;
  Manifest old_;
  std::string live_, generation_;
};

}  // namespace gallipot
