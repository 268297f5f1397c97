// Puts the sheet together: batch, lines, siblings, plan, what it makes, vessels, keeping.
#include "query/cooking/cook.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "indexer/measures/amount.h"
#include "query/cooking/bulk.h"
#include "query/cooking/equipment.h"
#include "query/cooking/gaps.h"
#include "query/cooking/glossary.h"
#include "query/cooking/keeping.h"
#include "query/cooking/lines.h"
#include "query/cooking/made.h"

namespace gallipot {
namespace {

constexpr double round_batch = 1000;  // grams or millilitres of a basis whose amount the print leaves open

constexpr int several_ways = 3;  // lines with two amounts or more, from which the sheet warns

std::optional<Fault> several(const Wanted& wanted) {
  const int asked = (wanted.scale ? 1 : 0) + (wanted.yield.empty() ? 0 : 1) + (wanted.have.empty() ? 0 : 1);
  if (asked <= 1) return std::nullopt;
  return Fault{"a batch cannot be set twice", {}, 0, "say one of --scale, --yield and --have"};
}

std::string siglum(std::size_t n) {
  std::string out;
  for (++n; n > 0; n = (n - 1) / 26) out.insert(out.begin(), static_cast<char>('A' + (n - 1) % 26));
  return out;
}

class Cook {
 public:
  Cook(const ComparableRecipe& recipe, const Book& book, std::vector<ComparableRecipe> siblings,
       std::vector<Book> sibling_books, const Lexicon& lexicon, const Yardstick& yardstick, const Kitchen& kitchen,
       const Wanted& wanted)
      : recipe_(recipe),
        book_(book),
        siblings_(std::move(siblings)),
        sibling_books_(std::move(sibling_books)),
        lexicon_(lexicon),
        yardstick_(yardstick),
        kitchen_(kitchen),
        wanted_(wanted),
        holdings_(holdings_of(recipe, yardstick)) {}

  Outcome<Sheet> cook() {
    if (auto wrong = several(wanted_)) return tl::unexpected(std::move(*wrong));
    if (!wanted_.start.empty()) {
      const auto start = read_start(wanted_.start);
      if (!start) return tl::unexpected(start.error());
      start_ = *start;
    }
    if (auto wrong = set_batch()) return tl::unexpected(std::move(*wrong));
    name_it();
    sort_siblings();
    const Gaps gaps = gaps_of(recipe_, siblings_, kitchen_, yardstick_);
    out_.gaps = gaps.gaps;
    out_.lines = lines_of(recipe_, holdings_, 1, yardstick_);
    ask_siblings_for_amounts(recipe_, book_, siblings_, sibling_books_, yardstick_, out_.lines);
    if (!wanted_.yield.empty())
      if (auto wrong = scale_to_yield(gaps.times)) return tl::unexpected(std::move(*wrong));
    for (SheetLine& line : out_.lines) scale_line(line, out_.batch.factor, yardstick_);
    plan(gaps.times);
    out_.made = made();
    out_.words = glosses_of(recipe_, kitchen_);
    out_.keeping = keeping_of(recipe_, out_.lines, kitchen_, yardstick_);
    out_.vessels = vessels_of(recipe_, out_.lines, out_.made, out_.keeping.meant_to_keep, kitchen_, yardstick_);
    out_.cautions = recipe_.cautions;
    notes();
    return std::move(out_);
  }

 private:
  void name_it() {
    out_.citation = cite(recipe_, book_);
    out_.title = recipe_.recipe.title;
    out_.text = recipe_.recipe.text;
    const Dish& dish = recipe_.dish;
    out_.dish = dish.base + (dish.base.empty() || dish.kind.empty() ? "" : " ") + dish.kind;
  }

  std::optional<Fault> set_batch() {
    if (wanted_.scale) {
      const auto scale = checked_scale(*wanted_.scale);
      if (!scale) return scale.error();
      out_.batch.factor = *scale;
      out_.batch.why = fmt::format("{:g} times the print.", *scale);
    }
    if (!wanted_.have.empty()) {
      const auto basket = read_basket(wanted_.have, lexicon_);
      if (!basket) return basket.error();
      auto batch = batch_for(*basket, recipe_, holdings_, yardstick_);
      if (!batch) return batch.error();
      out_.batch = std::move(*batch);
    }
    if (out_.batch.basis.empty()) take_a_round_basis();
    return std::nullopt;
  }

  /// "To each pound of fruit": where no amount stands on its own, a round one of the fruit is taken.
  void take_a_round_basis() {
    const auto at = untold_basis(holdings_);
    if (!at) return;
    Amount::Unit unit = Amount::Unit::gram;
    for (const Holding& holding : holdings_)
      if (holding.tie && holding.tie->to == *at) unit = holding.tie->whole.unit;
    const double amount = unit == Amount::Unit::count ? 12 : round_batch;
    holdings_[*at].amount = Amount{unit, amount, amount, amount, "a round batch; the print names none"};
    out_.batch.basis = holdings_[*at].name;
    out_.batch.basis_amount = times(*holdings_[*at].amount, out_.batch.factor);
    const std::string first = out_.batch.why;
    const char* words = unit == Amount::Unit::gram ? "1 kg of " : unit == Amount::Unit::count ? "12 " : "1 l of ";
    out_.batch.why =
        fmt::format("The print tells every amount by the {0} and does not say how much of that; {1}{0} is taken{2}",
                    out_.batch.basis, words, first.empty() ? "." : ", " + first);
  }

  /// Oldest first, as witnesses stand everywhere.
  void sort_siblings() {
    std::vector<std::size_t> order(siblings_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      const auto year = [&](std::size_t i) { return siblings_[i].year > 0 ? siblings_[i].year : 9999; };
      return year(a) != year(b) ? year(a) < year(b) : siblings_[a].id < siblings_[b].id;
    });
    std::vector<ComparableRecipe> siblings;
    std::vector<Book> books;
    for (const std::size_t i : order) {
      out_.siblings.push_back(cite(siblings_[i], sibling_books_[i]));
      out_.sigla.push_back(siglum(siblings.size()));
      siblings.push_back(std::move(siblings_[i]));
      books.push_back(std::move(sibling_books_[i]));
    }
    siblings_ = std::move(siblings);
    sibling_books_ = std::move(books);
  }

  void plan(const std::vector<BorrowedTime>& times) {
    PlanAsked asked;
    asked.start = start_;
    asked.borrowed = times;
    asked.kilograms = 0;
    for (const SheetLine& line : out_.lines) {
      if (line.kind != "fruit" && line.kind != "vegetable" && line.kind != "meat" && line.kind != "fish") continue;
      const auto grams = line.amount ? in_grams(line.name, *line.amount, yardstick_) : std::nullopt;
      if (grams) asked.kilograms += grams->likely / 1000;
    }
    if (asked.kilograms <= 0) asked.kilograms = 1;
    out_.plan = plan_of(recipe_, kitchen_, asked);
  }

  Made made() const {
    const bool covered = std::any_of(out_.gaps.begin(), out_.gaps.end(), [](const Gap& gap) {
      return gap.kind == Gap::Kind::cover && gap.borrowed() && gap.answers.front().words == "covered";
    });
    return made_of(recipe_, out_.lines, out_.plan, covered, kitchen_, yardstick_);
  }

  /// The factor for a yield is sought by halving, since what boils away does not grow with the batch.
  std::optional<Fault> scale_to_yield(const std::vector<BorrowedTime>& times) {
    const auto asked = read_yield(wanted_.yield);
    if (!asked) return asked.error();
    const std::vector<SheetLine> printed = out_.lines;
    const auto yields = [&](double factor) {
      out_.lines = printed;
      for (SheetLine& line : out_.lines) scale_line(line, factor, yardstick_);
      plan(times);
      const Made made_now = made();
      const auto& amount = asked->unit == Amount::Unit::gram ? made_now.grams : made_now.millilitres;
      return amount ? amount->likely : -1.0;
    };
    const double once = yields(1);
    if (once <= 0) {
      const std::string why_not = made().why_not;
      out_.lines = printed;
      return Fault{"what " + recipe_.id + " makes cannot be computed: " + why_not,
                   {},
                   0,
                   "say --scale, or --have with what is in the basket"};
    }
    double low = least_scale, high = greatest_scale;
    if (yields(low) > asked->value || yields(high) < asked->value) {
      out_.lines = printed;
      return Fault{
          fmt::format("\"{}\" of this is no batch for a kitchen; the print makes about {:.2g} {}", wanted_.yield,
                      once >= 1000 ? once / 1000 : once,
                      asked->unit == Amount::Unit::gram ? (once >= 1000 ? "kg" : "g") : (once >= 1000 ? "l" : "ml")),
          {},
          0,
          "ask for a yield nearer to that"};
    }
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (yields(middle) < asked->value ? low : high) = middle;
    }
    out_.lines = printed;
    out_.batch.factor = (low + high) / 2;
    const std::string before = out_.batch.basis.empty() ? "" : out_.batch.why + " ";
    out_.batch.why =
        fmt::format("{}{:.3g} times the print, to make about {}.", before, out_.batch.factor, wanted_.yield);
    if (out_.batch.basis_amount)
      out_.batch.basis_amount = ::gallipot::times(*out_.batch.basis_amount, out_.batch.factor);
    return std::nullopt;
  }

  void notes() {
    const bool any =
        std::any_of(out_.lines.begin(), out_.lines.end(), [](const SheetLine& l) { return l.amount || l.rate; });
    if (out_.lines.empty())
      out_.notes.emplace_back("The print names no ingredient that could be read.");
    else if (!any)
      out_.notes.emplace_back("The print gives no amounts; the lines say only what goes in.");
    const auto no_food = std::count_if(out_.lines.begin(), out_.lines.end(), [](const SheetLine& line) {
      return line.kind == "drug" || line.kind == "household";
    });
    if (2 * no_food > static_cast<std::ptrdiff_t>(out_.lines.size()))
      out_.notes.emplace_back(
          "Most of what goes in is a drug or a stuff of the household: a record of its time, not a receipt to make.");
    const auto twice = std::count_if(out_.lines.begin(), out_.lines.end(),
                                     [](const SheetLine& line) { return line.amount && line.print.size() > 1; });
    if (twice >= several_ways)
      out_.notes.emplace_back(
          "Several amounts of one stuff are added together here. The text may hold more than one way, or a list and "
          "its "
          "method: read the words under each line before weighing.");
    if (recipe_.steps.empty()) out_.notes.emplace_back("The print names no step that could be read; there is no plan.");
    if (siblings_.size() < fewest_speakers)
      out_.notes.push_back(
          fmt::format("Too few siblings on this shelf to ask ({}); nothing is borrowed.", siblings_.size()));
  }

  const ComparableRecipe& recipe_;
  const Book& book_;
  std::vector<ComparableRecipe> siblings_;
  std::vector<Book> sibling_books_;
  const Lexicon& lexicon_;
  const Yardstick& yardstick_;
  const Kitchen& kitchen_;
  const Wanted& wanted_;
  std::vector<Holding> holdings_;
  std::optional<LocalMinutes> start_;
  Sheet out_;
};

}  // namespace

Outcome<Sheet> cook(const ComparableRecipe& recipe, const Book& book, std::vector<ComparableRecipe> siblings,
                    std::vector<Book> sibling_books, const Lexicon& lexicon, const Yardstick& yardstick,
                    const Kitchen& kitchen, const Wanted& wanted) {
  return Cook(recipe, book, std::move(siblings), std::move(sibling_books), lexicon, yardstick, kitchen, wanted).cook();
}

Outcome<Sheet> cook(const Shelf& shelf, const Lexicon& lexicon, const Yardstick& yardstick, const Kitchen& kitchen,
                    std::string_view id, const Wanted& wanted) {
  const auto recipe = shelf.recipe(id);
  if (!recipe) return tl::unexpected(recipe.error());
  const Book* book = shelf.book(recipe->book);
  if (book == nullptr)
    return fault("the index has the recipe " + recipe->id + " but not its book", "index the shelf again");
  std::vector<ComparableRecipe> siblings;
  std::vector<Book> books;
  const auto variants = variants_of(shelf, lexicon, id, {}, wanted.siblings);
  if (!variants) return tl::unexpected(variants.error());
  for (const Variant& variant : variants->variants) {
    if (variant.score < sibling_score) continue;
    auto sibling = shelf.recipe(variant.id);
    const Book* its_book = sibling ? shelf.book(sibling->book) : nullptr;
    if (its_book == nullptr) continue;
    siblings.push_back(std::move(*sibling));
    books.push_back(*its_book);
  }
  return cook(*recipe, *book, std::move(siblings), std::move(books), lexicon, yardstick, kitchen, wanted);
}

}  // namespace gallipot
