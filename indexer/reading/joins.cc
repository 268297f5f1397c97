// Counts the two spellings of each broken word through the book, then edits.
#include "indexer/reading/joins.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <unordered_map>

#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

struct Broken {
  std::string joined;  ///< "overhead", lower case
  std::size_t left = 0;
  std::string_view right;
};

Broken broken_at(std::string_view text, std::uint32_t at) {
  Broken out;
  std::size_t begin = at - 1;
  while (begin > 0 && is_letter(text[begin - 1])) --begin;
  std::size_t end = at;
  while (end < text.size() && is_letter(text[end])) ++end;
  for (std::size_t i = begin; i < end; ++i)
    if (i + 1 != at) out.joined += lower(text[i]);
  out.left = at - 1 - begin;
  out.right = text.substr(at, end - at);
  return out;
}

struct Count {
  std::uint32_t joined = 0;
  std::uint32_t hyphenated = 0;
};

class Spellings {
 public:
  void want(const std::string& joined) {
    counts_[joined];
    first_[static_cast<unsigned char>(joined[0])] = true;
  }

  /// Counts every wanted word of a text, written with or without one hyphen.
  void count(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
      if (!is_letter(text[i])) {
        ++i;
        continue;
      }
      std::size_t end = i, hyphen = 0;
      while (end < text.size() && (is_letter(text[end]) || (text[end] == '-' && hyphen == 0 && end + 1 < text.size() &&
                                                            is_letter(text[end + 1])))) {
        if (text[end] == '-') hyphen = end;
        ++end;
      }
      if (first_[static_cast<unsigned char>(lower(text[i]))]) look_up(text.substr(i, end - i), hyphen > 0);
      i = end;
    }
  }

  Count of(const std::string& joined) const {
    const auto found = counts_.find(joined);
    return found == counts_.end() ? Count{} : found->second;
  }

 private:
  void look_up(std::string_view word, bool hyphen) {
    if (word.size() > 40) return;
    key_.clear();
    for (const char c : word)
      if (c != '-') key_ += lower(c);
    const auto found = counts_.find(key_);
    if (found != counts_.end()) ++(hyphen ? found->second.hyphenated : found->second.joined);
  }

  std::unordered_map<std::string, Count> counts_;
  std::array<bool, 256> first_{};
  std::string key_;
};

}  // namespace

void join_broken_words(Draft& draft) {
  if (draft.seams.empty()) return;
  Spellings spellings;
  std::erase_if(draft.seams, [&](const Seam& seam) {  // its text may have gone since
    const auto& text = draft.blocks[seam.block].text;
    return seam.at == 0 || seam.at >= text.size() || text[seam.at - 1] != '-';
  });
  for (const Seam& seam : draft.seams) {
    const Broken broken = broken_at(draft.blocks[seam.block].text, seam.at);
    if (!broken.joined.empty()) spellings.want(broken.joined);
  }
  for (const Block& block : draft.blocks) spellings.count(block.text);
  for (std::size_t s = 0; s < draft.seams.size();) {
    const std::uint32_t b = draft.seams[s].block;
    std::vector<Edit> edits;
    for (; s < draft.seams.size() && draft.seams[s].block == b; ++s) {
      const std::uint32_t at = draft.seams[s].at;
      const Broken broken = broken_at(draft.blocks[b].text, at);
      Count count = spellings.of(broken.joined);
      if (count.hyphenated > 0) --count.hyphenated;  // the broken word itself
      if (broken.right == "and" || broken.right == "or" || broken.right == "to") {
        edits.push_back({at, 0, " "});
      } else if (count.joined > 0 && count.hyphenated <= count.joined) {
        edits.push_back({at - 1, 1, ""});
      }
    }
    apply_edits(edits, draft.blocks[b]);
  }
}

}  // namespace gallipot
