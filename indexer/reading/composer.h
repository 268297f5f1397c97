// Sets characters into blocks: folds white space, notes where lines and runs begin. Internal to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/reading/draft.h"

namespace gallipot {

class Composer {
 public:
  explicit Composer(Draft& draft) : draft_(draft) {}

  /// True when a block is open, be it still without text.
  bool open() const { return open_; }
  bool has_text() const { return open_ && !block_.text.empty(); }
  /// Ends what is open and opens a new block; fill in what is known of it.
  Block& begin(Block::Kind kind);
  Block& current() { return block_; }
  /// Ends the open block; one without text is dropped (a rule is kept).
  void end();

  /// Sets text into the open block; `line` is the raw line of its first byte and is moved on over its line feeds.
  void put(std::string_view text, std::uint32_t& line);
  /// A break that carries meaning: '\n' before the next character, if any comes.
  void hard_break() { hard_ = has_text(); }
  /// As hard_break, and true where another break stood directly before it.
  bool broken_already() const { return hard_; }
  /// Parts cells: " | " before the next character, if both sides have text.
  void cell_break() { cell_ = has_text(); }

  /// Opens a run at the next character; the answer is for end_run.
  int begin_run(std::uint16_t style, std::string name);
  void end_run(int run);

  /// The words from here to end_mend are read so; what stands in the copy is `printed` (Block::mends).
  int begin_mend(std::string printed);
  /// With `unsure`, what was set is what stands there, and could not be read for sure.
  void end_mend(int mend, bool unsure = false);

  /// Notes that a page begins here, in the open block or before the next one.
  void page_mark(std::string label, std::uint32_t line, bool sure);

 private:
  void set_word(std::string_view word, std::uint32_t line);
  bool marked_here() const;
  void note_seam();

  Draft& draft_;
  Block block_;
  bool open_ = false;
  bool space_ = false;  ///< white space is due before the next character
  bool fold_ = false;   ///< ... and it held a line feed
  bool hard_ = false;
  bool cell_ = false;
  std::uint32_t last_line_ = 0;  ///< raw line of the last character set
};

}  // namespace gallipot
