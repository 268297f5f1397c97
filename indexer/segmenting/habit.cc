// Measures each typographic class of a book, then judges every opening by its class and by its own words.
#include "indexer/segmenting/habit.h"

#include <algorithm>
#include <cmath>
#include <unordered_set>

namespace gallipot {
namespace {

constexpr std::uint32_t far_enough = 150;  // words of prose that tell what follows an opening
constexpr std::uint32_t hardly_any = 5;    // words: nothing follows

double probability(double log_odds) { return 1 / (1 + std::exp(-log_odds)); }

bool has_number(const Opening& o) { return !o.number.empty() && o.number.begin < o.title.begin; }

/// Neither a heading nor set in any way; a number before a line that stands alone is a mark of a kind.
bool is_plain(const Opening& o) {
  return is_unset(o.setting) && !o.heading && !o.labelled && !(o.standing && has_number(o));
}

/// An opening that can stand between two receipts, whatever class it is of.
bool parts_receipts(const Opening& o) {
  if (o.bracketed || o.name || o.numeral || o.wording == Wording::part || o.wording == Wording::component) return false;
  return o.heading || (o.standing && !is_unset(o.setting));
}

/// `known`: figures of the classes where they have been weighed already: then a class that marks no receipts does not
/// end what follows, unless it is a heading.
std::vector<ProseCount> prose_after(const std::vector<Block>& blocks, const Openings& openings,
                                    const std::vector<GroupFigures>& known) {
  std::vector<ProseCount> after(openings.all.size());
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    const auto& o = openings.all[k];
    auto& sum = after[k];
    if (!o.standing) sum = openings.prose[o.block];
    for (std::size_t b = o.block + 1; b < blocks.size() && sum.words < far_enough; ++b) {
      const auto at = openings.at_block[b];
      if (openings.contents[b]) break;
      if (at >= 0) {
        const auto& next = openings.all[static_cast<std::size_t>(at)];
        const bool weighed_out = !known.empty() && !next.heading && known[next.group].weight < 0;
        if ((parts_receipts(next) && !weighed_out) || next.group == o.group) break;
        if (!known.empty() && known[next.group].role == Role::title && next.wording != Wording::part && !next.numeral &&
            !next.labelled)
          break;
        if (!next.standing && !o.standing) break;
      }
      if (blocks[b].kind != Block::Kind::note) sum += openings.prose[b];
    }
  }
  return after;
}

/// Nothing but ornaments stands between the opening and a marked line before it.
bool is_beneath(const Openings& openings, std::size_t k) {
  const auto& o = openings.all[k];
  for (std::uint32_t b = o.block; b > 0; --b) {
    const auto at = openings.at_block[b - 1];
    if (at >= 0 && openings.all[static_cast<std::size_t>(at)].standing) {
      const auto& before = openings.all[static_cast<std::size_t>(at)];
      return before.heading || (!is_unset(before.setting) && before.group != o.group);
    }
    if (openings.prose[b - 1].words > 0) return false;
  }
  return false;
}

/// A plain line with another of its class right after it, or, in a class that mostly has nothing under it, right before
/// it: an item of a list.
bool is_listed(const Openings& openings, std::size_t k, const GroupFigures& g) {
  const auto& o = openings.all[k];
  const auto neighbour = [&](std::size_t b) {
    if (b >= openings.at_block.size() || openings.at_block[b] < 0) return false;
    const auto& n = openings.all[static_cast<std::size_t>(openings.at_block[b])];
    return n.group == o.group && n.standing;
  };
  return neighbour(o.block + 1) || (o.block > 0 && g.followed * 10 < g.count * 6 && neighbour(o.block - 1));
}

void measure_groups(const Openings& openings, Habit& habit) {
  habit.groups.resize(openings.groups.size());
  std::vector<std::unordered_set<std::uint32_t>> wordings(openings.groups.size());
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    const auto& o = openings.all[k];
    auto& g = habit.groups[o.group];
    ++g.count;
    g.look += o.look;
    g.names += o.name;
    g.bare_names += o.bare_name;
    g.brackets += o.bracketed;
    g.beneath += is_beneath(openings, k);
    // "Another way" is said again and again, of another dish each time.
    wordings[o.group].insert(o.wording == Wording::way ? openings.wordings + static_cast<std::uint32_t>(k) : o.same);
    if (habit.after[k].words >= hardly_any) {
      ++g.followed;
      g.cooks += probability(habit.after[k].log_odds());
    }
  }
  for (std::size_t i = 0; i < habit.groups.size(); ++i) {
    auto& g = habit.groups[i];
    // Two invented members keep a class of one or two from being sure of itself.
    const double n = g.count + 2.0;
    g.look = (g.look + 2 * 0.3) / n;
    g.cooks = (g.cooks + 2 * 0.4) / (g.followed + 2.0);
    g.names /= n;
    g.bare_names /= n;
    g.brackets /= n;
    g.beneath /= n;
    g.variety = static_cast<double>(wordings[i].size()) / g.count;
  }
}

void weigh_group(GroupFigures& g, const Opening& example) {
  if (g.names > 0.4 || g.bare_names > 0.5) {
    g.role = Role::contributor;
    g.weight = -6;
    return;
  }
  const double followed = (g.followed + 1.0) / (g.count + 2.0);
  g.weight = 5 * (g.cooks - 0.6) + 3 * (followed - 0.7) + 4 * (g.look - 0.4) + 0.8 * std::log10(g.count + 1.0) - 0.4;
  if (g.variety < 0.4) g.weight -= 4;
  if (g.brackets > 0.5) g.weight -= 6;
  if (is_plain(example)) g.weight -= (example.setting == Setting::title_case ? 2 : 3) + 8 * g.beneath;
  g.role = g.weight > 0 ? Role::title : Role::none;
}

/// By opening: the last standing line before it that can part receipts; -1 where there is none.
std::vector<std::int32_t> governors(const Openings& openings) {
  std::vector<std::int32_t> out;
  std::int32_t last = -1;
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    out.push_back(last);
    if (parts_receipts(openings.all[k])) last = static_cast<std::int32_t>(k);
  }
  return out;
}

/// The class that marks most of the book's receipts; -1 where none does.
std::int32_t main_group(const Habit& habit, const std::vector<Opening>& example) {
  std::int32_t best = -1;
  double most = 0;
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    if (habit.groups[g].weight < 0) continue;
    const double n = habit.groups[g].count * std::min(habit.groups[g].weight, 2.0) * (is_plain(example[g]) ? 0.5 : 1.0);
    if (n > most) most = n, best = static_cast<std::int32_t>(g);
  }
  return best;
}

/// A class is weighed against the one that marks most receipts: heads above it are chapters, rare ones are doubtful,
/// and plain lines are hardly titles where others are marked.
void weigh_against(Habit& habit, std::size_t m, const std::vector<Opening>& example, const std::vector<int>& level) {
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    auto& f = habit.groups[g];
    if (g == m || f.role == Role::contributor) continue;
    if (f.count * 10 < habit.groups[m].count) f.weight -= 1;
    if (example[g].heading && (!example[m].heading || level[g] < level[m])) f.weight -= 2;
    if (is_plain(example[g]) && !is_plain(example[m]) && habit.groups[m].count * 2 > f.count) f.weight -= 3;
  }
}

/// A class whose members each stand over several of the book's titles heads its divisions.
void weigh_heading(const Openings& openings, std::size_t m, Habit& habit) {
  std::vector<double> headed(habit.groups.size());
  std::uint32_t met = 0;
  std::vector<std::uint32_t> met_at(habit.groups.size());
  std::vector<bool> seen(habit.groups.size());
  for (const auto& o : openings.all) {
    met += o.group == m;
    if (!o.standing || o.group == m) continue;
    if (seen[o.group]) headed[o.group] += std::min(met - met_at[o.group], 6U);
    seen[o.group] = true;
    met_at[o.group] = met;
  }
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    if (!seen[g]) continue;
    headed[g] += std::min(met - met_at[g], 6U);
    if (headed[g] / habit.groups[g].count >= 3) habit.groups[g].weight -= 2;
  }
}

/// Headings of one element and class mostly mean one thing, however their letters are set: a rare setting leans on its
/// kin.
void weigh_kin(Habit& habit, const std::vector<Opening>& example) {
  constexpr double lean = 6;
  std::vector<double> sum(habit.groups.size()), count(habit.groups.size());
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    if (!example[g].heading || habit.groups[g].role == Role::contributor) continue;
    sum[habit.groups[g].kin] += habit.groups[g].weight * habit.groups[g].count;
    count[habit.groups[g].kin] += habit.groups[g].count;
  }
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    auto& f = habit.groups[g];
    if (!example[g].heading || f.role == Role::contributor || count[f.kin] <= f.count) continue;
    const double kin = sum[f.kin] / count[f.kin];
    if (kin > f.weight) f.weight = (f.weight * f.count + kin * lean) / (f.count + lean);
  }
}

/// Run-ins under titles that stand alone are mostly labels within the receipt.
void weigh_nesting(const Openings& openings, const std::vector<std::int32_t>& governor, Habit& habit) {
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    if (openings.all[k].standing || openings.all[k].labelled || governor[k] < 0) continue;
    const auto& above = habit.groups[openings.all[static_cast<std::size_t>(governor[k])].group];
    if (above.weight > 0 && habit.after[static_cast<std::size_t>(governor[k])].words >= hardly_any)
      habit.groups[openings.all[k].group].nested += 1;
  }
  for (auto& g : habit.groups) {
    g.nested /= g.count;
    g.weight -= 4 * g.nested;
    if (g.role != Role::contributor) g.role = g.weight > 0 ? Role::title : Role::none;
  }
}

double wording_odds(Wording w) {
  switch (w) {
    case Wording::part:
      return -6;
    case Wording::component:
      return -2;
    case Wording::way:
      return 0.5;
    case Wording::chapter:
      return -6;
    case Wording::remarks:
      return -6;
    case Wording::division:
      return -1.2;
    case Wording::front:
      return -6;
    case Wording::menu:
      return -7;
    case Wording::calendar:
      return -10;
    case Wording::plain:
      return 0;
  }
  return 0;
}

double opening_odds(const Opening& o, const ProseCount& after, const GroupFigures& g, std::uint32_t repeats) {
  const auto follows = after.log_odds();
  // Short prose proves little; long prose that talks proves that it is no receipt.
  const double trust = follows >= 0        ? 0.5
                       : after.words < 30  ? 0.5
                       : after.words < 60  ? 0.65
                       : after.words < 140 ? 0.8
                                           : 1.1;
  double z = g.weight + trust * follows + 2 * (o.look - 0.4) + wording_odds(o.wording);
  if (after.words < hardly_any) z -= 8;
  if (o.bracketed || o.name) z -= 12;
  // A label met again and again ("Mode", "For the sauce") is the book's own way to part a receipt.
  if (!o.standing && o.wording == Wording::plain && repeats > 5) z -= 4;
  return z;
}

Role role_of(const Opening& o, double odds, const ProseCount& after, const GroupFigures& g, bool same_class_next) {
  if (odds > 0) return Role::title;
  if (o.name || (o.bare_name && g.role == Role::contributor)) return Role::contributor;
  if (o.bracketed) return Role::subtitle;
  if (o.numeral) return Role::none;
  if (o.wording == Wording::part || o.wording == Wording::component) return Role::none;
  if (!o.standing)
    return after.words > 30 && after.log_odds() < -0.7 && g.role != Role::title ? Role::essay : Role::none;
  if (is_unset(o.setting) && !o.heading) return Role::none;
  if (o.heading && g.role == Role::title && after.words < hardly_any && o.wording == Wording::plain && same_class_next)
    return Role::blank;
  if (o.heading || after.words < hardly_any || o.wording == Wording::chapter || o.wording == Wording::front ||
      o.wording == Wording::remarks || o.wording == Wording::menu || o.wording == Wording::calendar ||
      g.role == Role::title)
    return Role::chapter;
  return after.log_odds() < 0 ? Role::chapter : Role::none;
}

const char* setting_words(Setting s) {
  switch (s) {
    case Setting::plain:
      return "plain";
    case Setting::title_case:
      return "with capital initials";
    case Setting::caps:
      return "in capitals";
    case Setting::italic:
      return "in italics";
    case Setting::bold:
      return "in bold";
    case Setting::bold_caps:
      return "in bold capitals";
    case Setting::small_caps:
      return "in small capitals";
    case Setting::underline:
      return "underlined";
    case Setting::margin:
      return "in the margin";
    case Setting::mixed:
      return "in mixed settings";
  }
  return "";
}

/// "numbered h3.recipe in italics", "run in, in small capitals".
std::string describe(const Opening& o, std::string_view style) {
  std::string out = has_number(o) ? "numbered " : "";
  const auto element = style.substr(0, style.find(' '));
  out += !o.standing ? "run in" : element.empty() ? "line alone" : std::string(element);
  return out + (o.standing ? " " : ", ") + setting_words(o.setting);
}

/// How the book marks its receipts, the commonest way first.
std::string tell(const std::vector<Block>& blocks, const Openings& openings, const Habit& habit) {
  std::unordered_map<std::string, std::uint32_t> ways;
  std::uint32_t all = 0;
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    if (habit.roles[k] != Role::title) continue;
    ++ways[describe(openings.all[k], blocks[openings.all[k].block].style)];
    ++all;
  }
  std::vector<std::pair<std::string, std::uint32_t>> order(ways.begin(), ways.end());
  std::sort(order.begin(), order.end(),
            [](auto& a, auto& b) { return a.second != b.second ? a.second > b.second : a.first < b.first; });
  std::string out;
  for (const auto& [way, count] : order) {
    if (count * 50 < all) break;
    if (!out.empty()) out += "; ";
    out += way + " (" + std::to_string(count) + ")";
  }
  return out.empty() ? "no receipts are marked" : out;
}

}  // namespace

/// The first opening that is a head of front matter, if it stands near the book's beginning; else 0.
std::size_t front_matter(const std::vector<Block>& blocks, const Openings& openings) {
  for (std::size_t k = 0; k < openings.all.size() && openings.all[k].block * 20 < blocks.size(); ++k)
    if (openings.all[k].wording == Wording::front) return k;
  return 0;
}

Habit learn_habit(const std::vector<Block>& blocks, const Openings& openings) {
  Habit habit;
  habit.after = prose_after(blocks, openings, {});
  measure_groups(openings, habit);
  std::vector<std::uint32_t> repeats(openings.wordings);
  std::vector<Opening> example(habit.groups.size());
  std::vector<int> level(habit.groups.size());
  for (const auto& o : openings.all) {
    ++repeats[o.same];
    example[o.group] = o;
    level[o.group] = blocks[o.block].level;
  }
  std::unordered_map<std::string, std::uint32_t> kin;
  for (std::uint32_t g = 0; g < habit.groups.size(); ++g) {
    const auto& name = openings.groups[g];  // "stands s3c h3.recipe": the element and its level
    habit.groups[g].kin = kin.emplace(std::to_string(level[g]) + name.substr(name.rfind(' ')), g).first->second;
  }
  for (std::size_t g = 0; g < habit.groups.size(); ++g) weigh_group(habit.groups[g], example[g]);
  const auto main = main_group(habit, example);
  if (main >= 0) {
    weigh_against(habit, static_cast<std::size_t>(main), example, level);
    weigh_heading(openings, static_cast<std::size_t>(main), habit);
    weigh_kin(habit, example);
  }
  const auto governor = governors(openings);
  const auto front = front_matter(blocks, openings);
  weigh_nesting(openings, governor, habit);
  habit.after = prose_after(blocks, openings, habit.groups);
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    const auto& o = openings.all[k];
    const auto& g = habit.groups[o.group];
    auto odds = opening_odds(o, habit.after[k], g, repeats[o.same]);
    // Items of a numbered row are of one kind, whatever each of them talks of.
    if (static_cast<std::int32_t>(o.group) == main && !o.standing && has_number(o)) odds += 0.7;
    // Where the book has a preface, what stands before it is the title page.
    if (k < front) odds -= 10;
    if (is_plain(o) && o.standing && (is_beneath(openings, k) || is_listed(openings, k, g))) odds -= 3;
    if (o.labelled || o.numeral)
      odds = is_beneath(openings, k) || habit.after[k].words < hardly_any || habit.after[k].log_odds() < 0 ? -4 : 1;
    if (!o.standing && !o.labelled && governor[k] >= 0 &&
        habit.roles[static_cast<std::size_t>(governor[k])] == Role::title)
      odds -= 2;
    habit.odds.push_back(odds);
    const bool same_class_next = k + 1 < openings.all.size() && openings.all[k + 1].group == o.group;
    habit.roles.push_back(role_of(o, odds, habit.after[k], g, same_class_next));
  }
  habit.sentence = tell(blocks, openings, habit);
  return habit;
}

}  // namespace gallipot
