// Reads the marks line by line; what stands in brackets is looked for once a paragraph's words are set.
#include "indexer/reading/notes_text.h"

#include <algorithm>
#include <array>
#include <optional>

#include "indexer/reading/composer.h"
#include "indexer/reading/draft.h"
#include "indexer/reading/edits.h"
#include "indexer/reading/emphasis.h"
#include "indexer/reading/page_marks.h"

namespace gallipot {
namespace {

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && static_cast<unsigned char>(s.front()) <= ' ') s.remove_prefix(1);
  while (!s.empty() && static_cast<unsigned char>(s.back()) <= ' ') s.remove_suffix(1);
  return s;
}

bool digit(char c) { return c >= '0' && c <= '9'; }

/// The words after "- ", "* " or "+ "; nothing where the line is no item.
std::optional<std::string_view> item(std::string_view line) {
  if (line.size() > 2 && (line[0] == '-' || line[0] == '*' || line[0] == '+') && line[1] == ' ')
    return trimmed(line.substr(2));
  return std::nullopt;
}

/// The words after "1. "; nothing where the line is no step.
std::optional<std::string_view> step(std::string_view line) {
  std::size_t i = 0;
  while (i < line.size() && i < 3 && digit(line[i])) ++i;
  if (i == 0 || i + 1 >= line.size() || (line[i] != '.' && line[i] != ')') || line[i + 1] != ' ') return std::nullopt;
  return trimmed(line.substr(i + 2));
}

/// The label in "[p. 12]", alone on its line; empty where the line is no such mark.
std::string page_in(std::string_view line) {
  if (line.size() < 5 || line.front() != '[' || line.back() != ']' || (line[1] != 'p' && line[1] != 'P')) return {};
  return page_label(line);
}

class NotesReader {
 public:
  explicit NotesReader(Draft& draft) : draft_(draft), composer_(draft) {}

  void read(std::string_view text) {
    text = front_matter(text);
    while (!text.empty()) {
      const auto end = std::min(text.find('\n'), text.size());
      take(text.substr(0, end));
      ++line_;
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    composer_.end();
  }

 private:
  std::string_view front_matter(std::string_view text);
  void take(std::string_view raw);
  void head(std::string_view line);
  void put(std::string_view words) {
    std::uint32_t line = line_;
    composer_.put(words, line);
  }
  Block& open(Block::Kind kind, std::string_view style) {
    Block& block = composer_.begin(kind);
    block.style = style;
    return block;
  }

  Draft& draft_;
  Composer composer_;
  std::uint32_t line_ = 1;
  bool remark_ = false;  ///< the open block is a remark
};

/// Takes "NAME: VALUE" lines between two rules off the beginning.
std::string_view NotesReader::front_matter(std::string_view text) {
  static constexpr std::array<std::string_view, 12> fields = {"title",     "creator", "contributor", "date",
                                                              "publisher", "place",   "country",     "edition",
                                                              "language",  "rights",  "source",      "identifier"};
  if (!text.starts_with("---\n") && !text.starts_with("---\r\n")) return text;
  auto rest = text.substr(text.find('\n') + 1);
  std::uint32_t lines = 2;
  std::vector<Proposal> found;
  while (!rest.empty()) {
    const auto end = std::min(rest.find('\n'), rest.size());
    const auto line = trimmed(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (line == "---") {
      line_ = lines + 1;
      draft_.proposals.insert(draft_.proposals.end(), found.begin(), found.end());
      return rest;
    }
    const auto colon = line.find(':');
    const auto name = line.substr(0, colon);
    if (colon != std::string_view::npos && std::find(fields.begin(), fields.end(), name) != fields.end())
      found.push_back({std::string(name), std::string(trimmed(line.substr(colon + 1))), "head of the notes"});
    ++lines;
  }
  return text;  // the second rule is missing: it is a text that begins with a rule
}

void NotesReader::head(std::string_view line) {
  int level = 0;
  while (!line.empty() && line.front() == '#') line.remove_prefix(1), ++level;
  while (!line.empty() && (line.back() == '#' || line.back() == ' ')) line.remove_suffix(1);
  open(Block::Kind::heading, "head").level = std::min(level, 6);
  put(line);
  composer_.end();
}

void NotesReader::take(std::string_view raw) {
  const bool kept_end = raw.ends_with("  ") || raw.ends_with("\\");
  auto line = trimmed(raw);
  if (line.ends_with('\\')) line.remove_suffix(1);
  if (line.empty()) {
    composer_.end();
    remark_ = false;
    return;
  }
  const auto hashes = line.find_first_not_of('#');
  if (line[0] == '#' && hashes != std::string_view::npos && line[hashes] == ' ') {
    head(line);
  } else if (const std::string page = page_in(line); !page.empty()) {
    composer_.page_mark(page, line_, true);
  } else if (line.size() >= 3 && line.find_first_not_of("-*_ ") == std::string_view::npos) {
    open(Block::Kind::rule, "rule").lines.push_back({0, line_});
    composer_.end();
  } else if (line.starts_with("-- ") || line.starts_with("\xE2\x80\x94")) {
    open(Block::Kind::paragraph, "giver").right_aligned = true;
    put(trimmed(line.substr(line.find_first_not_of("- \xE2\x80\x94"))));
    composer_.end();
  } else if (const auto words = item(line)) {
    open(Block::Kind::list_item, "item").level = 1;
    put(*words);
    put(" ");
  } else if (const auto done = step(line)) {
    open(Block::Kind::paragraph, "step");
    put(*done);
    put(" ");
  } else if (line[0] == '>') {
    if (!remark_) open(Block::Kind::note, "remark");
    remark_ = true;
    put(trimmed(line.substr(1)));
    put(" ");
    return;
  } else {
    if (remark_ || !composer_.open()) open(Block::Kind::paragraph, "text");
    put(line);
    if (kept_end)
      composer_.hard_break();
    else
      put(" ");
  }
  remark_ = false;
}

/// "[?butter]" is the word butter, not read for sure; "[...]" is words that nobody could read.
void find_unsure(Block& block) {
  struct Found {
    std::uint32_t begin, end;
    bool word;
  };
  std::vector<Found> found;
  for (std::size_t at = block.text.find('['); at != std::string::npos; at = block.text.find('[', at + 1)) {
    const auto end = block.text.find(']', at);
    if (end == std::string::npos) break;
    const bool word = block.text[at + 1] == '?' && end > at + 2;
    if (word || block.text.compare(at, end + 1 - at, "[...]") == 0)
      found.push_back({static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(end), word});
  }
  if (found.empty()) return;
  std::vector<Edit> edits;
  for (const Found& f : found) {
    if (f.word) edits.push_back({f.begin, 2, ""});
    if (f.word) edits.push_back({f.end, 1, ""});
    block.mends.push_back({{f.begin, f.end + 1}, {}, {}});
  }
  apply_edits(edits, block);
  for (Mend& m : block.mends) m.printed = m.read = std::string(m.span.in(block.text));
}

}  // namespace

Draft draft_notes(std::string_view text) {
  Draft draft;
  std::string plain;
  plain.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 2) == "**") ++i;  // heavy is marked with one star, as in plain text
    plain += text[i];
  }
  NotesReader(draft).read(plain);
  read_emphasis(draft);
  for (Block& block : draft.blocks) find_unsure(block);
  return draft;
}

}  // namespace gallipot
