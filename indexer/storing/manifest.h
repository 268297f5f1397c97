// The manifest of an index, shelf.json: which books are in it and which generation of the database is live.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"

namespace gallipot {

/// A book as it is in an index.
struct ShelvedBook {
  Book book;                ///< `path` is empty: where the file lay is no part of the index
  std::uint32_t order = 0;  ///< its place on the shelf; kept when the book is indexed again
  std::uint64_t recipes = 0;
  std::uint64_t bytes = 0;       ///< of the file
  std::uint64_t statements = 0;  ///< on measures
  std::string tables;            ///< Lexicon::fingerprint() when it was indexed
};

struct Manifest {
  std::string generation;          ///< name of the live database in the index folder: "generation-3"
  std::vector<ShelvedBook> books;  ///< by order
};

/// Whether there is a manifest in the folder, readable or not.
bool has_manifest(const std::string& folder);

/// Faults: no index there, not JSON (with the line), a field missing, another version (told which).
Outcome<Manifest> read_manifest(const std::string& folder);

/// Replaces the manifest in one step: a reader sees the old one or the new one. On disk when it returns.
Outcome<bool> write_manifest(const std::string& folder, const Manifest& manifest);

}  // namespace gallipot
