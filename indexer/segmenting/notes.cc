// Reads the marks of footnotes where they are printed.
#include "indexer/segmenting/notes.h"

#include <string_view>

namespace gallipot {
namespace {

/// The mark itself: without brackets, and without what a transcriber set after it ("1:(return)").
std::string mark_key(std::string_view printed) {
  std::string key;
  for (const char c : printed) {
    if (c == ':' || c == ' ') break;
    if (c != '[' && c != ']' && c != '(' && c != ')' && c != '.') key += c;
  }
  return key;
}

}  // namespace

void NoteMarks::meet(const Block& block, std::size_t recipe) {
  for (const auto& run : block.runs)
    if (run.style & Run::note_mark) owner_[mark_key(run.span.in(block.text))] = recipe;
  last_ = nowhere;
}

std::size_t NoteMarks::owner(const Block& note, std::size_t otherwise) {
  std::string key;
  for (const auto& run : note.runs)
    if ((run.style & Run::note_mark) && run.span.begin < 16 && key.empty()) key = mark_key(run.span.in(note.text));
  if (key.empty() && !note.text.empty() && note.text.front() == '[')
    key = mark_key(std::string_view(note.text).substr(0, note.text.find(']')));
  if (key.empty()) return last_ == nowhere ? otherwise : last_;
  const auto it = owner_.find(key);
  return last_ = it == owner_.end() ? otherwise : it->second;
}

}  // namespace gallipot
