// Hangs each witness on its likeliest source.
#include "query/grouping/stemma.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <tuple>

namespace gallipot {
namespace {

std::string siglum_of(std::size_t place) {
  std::string out;
  for (std::size_t n = place + 1; n > 0; n = (n - 1) / 26)
    out.insert(out.begin(), static_cast<char>('A' + (n - 1) % 26));
  return out;
}

auto order_key(const StemmaText& one) {
  constexpr int undated = std::numeric_limits<int>::max();
  const auto years = years_of_text(*one.book);
  return std::tuple(years ? years->first : undated, years ? years->last : undated,
                    one.book->years ? one.book->years->first : undated, std::string_view(one.text->id));
}

std::string percent(double share) { return fmt::format("{:.0f}%", 100 * share); }

struct Parent {
  std::size_t place = 0;
  double telling = 0, share = 0;
};

/// The best and the second best of the witnesses before `place`.
std::vector<Parent> parents_of(const std::vector<StemmaText>& texts, std::size_t place) {
  std::vector<Parent> out;
  for (std::size_t before = 0; before < place; ++before) {
    if (texts[before].text->book == texts[place].text->book) continue;
    const auto kinship = kinship_of(*texts[before].text, *texts[place].text);
    if (kinship.tied()) out.push_back({before, kinship.telling_of_second, kinship.of_second});
  }
  std::stable_sort(out.begin(), out.end(), [](const Parent& a, const Parent& b) { return a.telling > b.telling; });
  return out;
}

}  // namespace

Stemma stemma_of(std::vector<StemmaText> texts) {
  std::sort(texts.begin(), texts.end(),
            [](const StemmaText& a, const StemmaText& b) { return order_key(a) < order_key(b); });
  Stemma out;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    StemmaNode node;
    node.id = texts[i].text->id;
    node.siglum = siglum_of(i);
    node.years = years_of_text(*texts[i].book);
    const auto parents = parents_of(texts, i);
    if (parents.empty()) {
      node.why = i == 0 ? "The oldest of these witnesses." : "No witness before it here has its words.";
    } else {
      const Parent& best = parents.front();
      node.parent = best.place;
      node.share = best.share;
      node.sure_of_order = earlier_of(*texts[best.place].book, *texts[i].book).which == Order::Which::first;
      node.why = fmt::format("{} of its words stand in {}", percent(best.share), siglum_of(best.place));
      if (parents.size() > 1)
        node.why += fmt::format(", {} in {}", percent(parents[1].share), siglum_of(parents[1].place));
      node.why += node.sure_of_order ? "." : "; which of the two is the earlier the dates do not say.";
    }
    out.nodes.push_back(std::move(node));
  }
  return out;
}

}  // namespace gallipot
