// Lineage to read: the finding first, then each source with what was changed, then the tree.
#include <fmt/format.h>

#include <algorithm>

#include "query/citing/cite.h"
#include "query/reporting/layout.h"
#include "query/reporting/lineage_report.h"

namespace gallipot {
namespace {

constexpr std::size_t most_changes = 12;      // shown of one kin
constexpr std::size_t most_of_a_change = 60;  // columns

/// "The Virginia Housewife, 1860, p. 134".
std::string where(const Citation& citation) {
  std::string out = citation.book.title.empty() ? citation.book.id : citation.book.title;
  if (!citation.book.date.empty()) out += ", " + citation.book.date;
  return out + ", " + citation.place_in_book();
}

std::string titled(const Shelf& shelf, const std::string& id) {
  const auto citation = cite(shelf, id);
  return citation && !citation->title.empty() ? citation->title : std::string("(without a title)");
}

std::string place(const Shelf& shelf, const std::string& id) {
  const auto citation = cite(shelf, id);
  return citation ? where(*citation) : std::string();
}

std::string percent(double share) { return fmt::format("{:.0f}%", 100 * share); }

std::string shortened(const std::string& words) {
  const auto lines = wrapped(words, most_of_a_change);
  return lines.size() <= 1 ? words : lines.front() + " ...";
}

std::string change_line(const WordChange& change) {
  std::string out = change.stuff.empty() ? std::string() : change.stuff + ": ";
  if (change.kind == WordChange::Kind::moved) return "moved: " + shortened(change.was.empty() ? change.is : change.was);
  if (change.was.empty()) return out + "+ " + shortened(change.is);
  if (change.is.empty()) return out + "- " + shortened(change.was);
  return out + shortened(change.was) + " -> " + shortened(change.is);
}

std::string changes_text(const std::vector<WordChange>& changes, const TextStyle& style) {
  if (changes.empty()) return paragraph("Word for word the same.", style.width, "       ");
  const auto amounts = std::count_if(changes.begin(), changes.end(),
                                     [](const WordChange& c) { return c.kind == WordChange::Kind::amount; });
  std::string out = paragraph(fmt::format("{} changed, {} of them amounts:",
                                          changes.size() == 1 ? "1 place" : fmt::format("{} places", changes.size()),
                                          amounts == 0 ? "none" : std::to_string(amounts)),
                              style.width, "       ");
  const std::size_t shown = std::min(changes.size(), most_changes);
  for (std::size_t i = 0; i < shown; ++i) out += paragraph(change_line(changes[i]), style.width, "         ");
  if (shown < changes.size()) out += fmt::format("         and {} more (--csv has them all)\n", changes.size() - shown);
  return out;
}

std::string kin_text(const Kin& kin, const Shelf& shelf, const TextStyle& style, bool taken_over) {
  std::string out = paragraph(fmt::format("{}   {}", titled(shelf, kin.id), kin.id), style.width, "  - ");
  out += paragraph(place(shelf, kin.id), style.width, "       ");
  std::string how =
      fmt::format("{}: {} of {} words stand in {}; {} of {} words in {}", kin.copy ? "Copied" : "Revised",
                  percent(kin.verbatim), taken_over ? "its" : "this recipe's", taken_over ? "this" : "it",
                  percent(kin.of_earlier), taken_over ? "this recipe's" : "its", taken_over ? "it" : "this");
  if (kin.same_author) how += "; the same author";
  out += paragraph(how + ".", style.width, "       ");
  out += paragraph(kin.order.why, style.width, "       ");
  return out + changes_text(kin.changes, style);
}

std::string section(const char* heading, const std::vector<Kin>& all, const Shelf& shelf, const TextStyle& style,
                    bool taken_over) {
  if (all.empty()) return {};
  std::string out = std::string("\n") + heading + "\n";
  for (const Kin& kin : all) out += kin_text(kin, shelf, style, taken_over);
  return out;
}

std::string year_of(const StemmaNode& node) {
  if (!node.years) return "no date";
  if (node.years->first == node.years->last) return std::to_string(node.years->first);
  return fmt::format("{}-{}", node.years->first, node.years->last);
}

std::string node_text(const StemmaNode& node, std::size_t depth, const std::string& of, const TextStyle& style) {
  const std::string lead(2 + 3 * depth, ' ');
  return paragraph(fmt::format("{} {}  {}{}   {}", node.siglum, year_of(node), node.id,
                               node.id == of ? " (this recipe)" : "", node.why),
                   style.width, lead);
}

/// Children after their parent, each a step further in.
std::string tree(const Stemma& stemma, const std::string& of, const TextStyle& style) {
  std::string out = "\nStemma\n";
  std::vector<std::pair<std::size_t, std::size_t>> waiting;  // node, depth; the last is next
  const auto push_children = [&](std::optional<std::size_t> parent, std::size_t depth) {
    for (std::size_t i = stemma.nodes.size(); i-- > 0;)
      if (stemma.nodes[i].parent == parent) waiting.emplace_back(i, depth);
  };
  push_children(std::nullopt, 0);
  while (!waiting.empty()) {
    const auto [at, depth] = waiting.back();
    waiting.pop_back();
    out += node_text(stemma.nodes[at], depth, of, style);
    push_children(at, depth + 1);
  }
  return out;
}

}  // namespace

std::string lineage_as_text(const Lineage& lineage, const Shelf& shelf, const TextStyle& style) {
  std::string out =
      paragraph(fmt::format("Lineage of {} ({}), {}", titled(shelf, lineage.of), lineage.of, place(shelf, lineage.of)),
                style.width);
  if (!lineage.note.empty()) out += paragraph(lineage.note, style.width);
  if (lineage.first && *lineage.first != lineage.of)
    out += paragraph(fmt::format("First witness: {} ({}), {}. {}", titled(shelf, *lineage.first), *lineage.first,
                                 place(shelf, *lineage.first), lineage.first_why),
                     style.width);
  else if (lineage.note.empty())
    out += paragraph(lineage.first_why, style.width);
  const auto undecided = std::find_if(lineage.earlier.begin(), lineage.earlier.end(),
                                      [](const Kin& kin) { return kin.order.which == Order::Which::undecided; });
  out += section("Earlier witnesses", {lineage.earlier.begin(), undecided}, shelf, style, false);
  out += section("Kin of which the dates do not say whether they are earlier", {undecided, lineage.earlier.end()},
                 shelf, style, false);
  out += section("Taken over by", lineage.later, shelf, style, true);
  if (!lineage.in_same_book.empty()) {
    out += "\nIn the same book, and so no witness to it\n";
    for (const Kin& kin : lineage.in_same_book)
      out += paragraph(fmt::format("{}   {}; {} of its words", titled(shelf, kin.id), kin.id, percent(kin.verbatim)),
                       style.width, "  - ");
  }
  if (lineage.stemma.nodes.size() > 1) out += tree(lineage.stemma, lineage.of, style);
  return out;
}

}  // namespace gallipot
