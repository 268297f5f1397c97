// The reading room: the whole job on pages for a browser, and the same models as JSON. Thin over query/*.
//
// A Room answers plain requests and knows nothing of sockets (see server.h for those). Every page is rendered from a
// template of query/reporting/pages and works without scripts. Thread-safe.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "tools/reading_room/indexing.h"
#include "tools/reading_room/readers.h"
#include "tools/reading_room/request.h"

namespace gallipot::room {

struct RoomOptions {
  std::string index;
  std::string dossiers;  ///< folder of the dossiers; empty: "INDEX.dossiers" beside the index
  std::string
      catalogue;  ///< shelf list of the books' files, to read a book again when its cut is corrected; may be empty
  std::string tables;
  std::string token;  ///< what a request from another machine must show; empty: loopback only, and none is asked
};

class Room {
 public:
  /// Faults: as Readers::open.
  static Outcome<std::unique_ptr<Room>> open(RoomOptions options);

  /// Never throws. Checks who asks before anything else.
  Answer answer(const Request& request);

  /// The addresses to which forms are posted.
  static std::vector<std::string> written_paths();

  const RoomOptions& options() const { return options_; }
  Readers& readers() { return *readers_; }
  Indexing& indexing() { return *indexing_; }
  /// What every form of ours carries, made anew each run.
  const std::string& secret() const { return secret_; }

 private:
  Room(RoomOptions options, std::unique_ptr<Readers> readers);
  Answer checked(const Request& request);
  Answer routed(const Request& request);

  const RoomOptions options_;
  const std::string secret_;
  std::unique_ptr<Readers> readers_;
  std::unique_ptr<Indexing> indexing_;
};

}  // namespace gallipot::room
