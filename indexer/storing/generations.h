// Generations of an index on disk: how a new one comes to stand in the place of the old, and what is cleared away.
#pragma once

#include <string>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// The file in an index folder whose lock is held by the one process that may write there.
inline constexpr const char* writing_lock_name = "writing.lock";

/// Makes `folder` if it is not there. Faults: it is a file, cannot be made, or holds what is no part of an index while
/// no index is in it. Answers whether it was made now.
Outcome<bool> prepare_index_folder(const std::string& folder);

/// The name after `live` ("generation-3" -> "generation-4"); the first where `live` is empty.
std::string next_generation(const std::string& live);
/// The name of the folder in which a generation is built: "generation-4" -> "building-4".
std::string building_name(const std::string& generation);

/// Removes generations and half-built ones other than `live` (a name, may be empty). Touches nothing else.
void clear_leftovers(const std::string& folder, const std::string& live);

/// A local copy of the database at `live`, at `copy`, without the recipes and statements of `books`.
/// Faults: the database lies on another machine. Throws Xapian::Error.
Outcome<bool> copy_without(const std::string& live, const std::string& copy, const std::vector<std::string>& books);

/// Merges databases into one at `to`. Faults: one of them lies on another machine. Throws Xapian::Error.
Outcome<bool> merge(const std::vector<std::string>& sources, const std::string& to);

/// Makes `building` into a folder database of the shards named in it (paths inside `building`).
Outcome<bool> name_together(const std::string& building, const std::vector<std::string>& shards);

}  // namespace gallipot
