// Fills a lexicon from its tables: what is written in a row, and what the compounds table makes of it.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/lexicon/lexicon.h"
#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

// FNV-1a, 64 bits (Fowler, Noll and Vo): enough to tell that a table changed.
class Digest {
 public:
  void take(const Table& table) {
    for (const auto& row : table.rows)
      for (const auto cell : row.cells) {
        for (const char c : cell) mix(static_cast<unsigned char>(c));
        mix(0);
      }
  }
  std::string text() const { return fmt::format("{:016x}", state_); }

 private:
  void mix(unsigned char c) { state_ = (state_ ^ c) * 0x100000001B3ULL; }
  std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

// Rows in the order in which they may claim a form: the user's own come first.
std::vector<const Table::Row*> by_claim(const Table& table) {
  std::vector<const Table::Row*> out;
  for (const auto& row : table.rows)
    if (row.own) out.push_back(&row);
  for (const auto& row : table.rows)
    if (!row.own) out.push_back(&row);
  return out;
}

// `pattern` with its X replaced.
std::string with_x(std::string_view pattern, std::string_view x) {
  std::string out;
  for (const char c : pattern) {
    if (c == 'X')
      out += x;
    else
      out += c;
  }
  return out;
}

bool several_words(std::string_view form) { return form.find_first_of(" -") != std::string_view::npos; }

std::string written_together(std::string_view form) {
  std::string out(form);
  std::erase_if(out, [](char c) { return c == ' ' || c == '-'; });
  return out;
}

// "juice of X" tells the part word "juice"; other patterns tell none.
std::string_view part_word(std::string_view pattern) {
  constexpr std::string_view end = " of X";
  return pattern.ends_with(end) ? pattern.substr(0, pattern.size() - end.size()) : std::string_view{};
}

}  // namespace

class Filling {
 public:
  Filling(Lexicon& lexicon, const std::string& overlay_folder) : lexicon_(lexicon), overlay_(overlay_folder) {}

  Outcome<void> run() {
    for (const auto step : {&Filling::foodstuffs, &Filling::compounds, &Filling::measures, &Filling::operations,
                            &Filling::dish_kinds, &Filling::spellings})
      if (auto done = (this->*step)(); !done) return done;
    lexicon_.fingerprint_ = digest_.text();
    return {};
  }

 private:
  static constexpr std::uint32_t none = 0xFFFFFFFF;
  struct Pattern {  ///< words before and after the X, as numbers of the foodstuff phrases
    std::vector<std::uint32_t> before, after;
    std::uint32_t part = none;  ///< number of the part word, where the pattern tells one
  };
  struct Compound {  ///< one row of the compounds table, cut up
    std::string_view name, kind;
    std::vector<std::string_view> of;
    std::vector<Pattern> patterns;
  };

  Outcome<Table> table(const std::string& name, std::initializer_list<std::string_view> columns) {
    auto out = load_table(name, overlay_);
    if (!out) return out;
    for (const auto wanted : columns)
      if (out->column(wanted) < 0)
        return fault(fmt::format("the table has no column \"{}\"", wanted),
                     "add it to the heading line and to every row", out->file);
    for (const auto& row : out->rows)
      if (row.cells[0].empty())
        return fault("this row has an empty first cell", "name the thing that the row is about", out->file_of(row),
                     row.line);
    digest_.take(*out);
    return out;
  }

  // Reads a table whose rows are things with other printed forms; names are claimed before any other form.
  template <typename Thing, typename Make>
  void fill(const Table& from, std::vector<Thing>& things, Phrases& phrases, bool named, Make make) {
    const auto rows = by_claim(from);
    for (const auto* row : rows) {
      if (named) phrases.add(row->cells[0], static_cast<std::uint32_t>(things.size()));
      things.push_back(make(*row));
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
      for (const auto form : parts_of(from.cell(*rows[i], "forms"))) phrases.add(form, static_cast<std::uint32_t>(i));
  }

  Outcome<void> foodstuffs() {
    const auto t = table("foodstuffs", {"name", "kind", "base", "weak", "forms"});
    if (!t) return tl::unexpected(t.error());
    const auto rows = by_claim(*t);
    for (const auto* row : rows) {
      lexicon_.foodstuff_by_name_.emplace(row->cells[0], static_cast<std::uint32_t>(lexicon_.foodstuffs_.size()));
      lexicon_.foodstuffs_.push_back({std::string(row->cells[0]), std::string(t->cell(*row, "kind")),
                                      std::string(t->cell(*row, "base")), t->cell(*row, "weak") == "1"});
    }
    simple_forms_.resize(rows.size());
    for (std::uint32_t i = 0; i < rows.size(); ++i) lexicon_.foodstuff_phrases_.add(rows[i]->cells[0], i);
    for (std::uint32_t i = 0; i < rows.size(); ++i) forms_of(*t, *rows[i], i);
    return {};
  }

  // The other forms of one foodstuff. Those less weak, or weaker, than its name lead to a twin that says so.
  void forms_of(const Table& t, const Table::Row& row, std::uint32_t at) {
    const auto forms = parts_of(t.cell(row, "forms"));
    std::uint32_t twin = at;
    for (auto form : forms) {
      const bool weak = form.front() == '~';
      if (weak) form.remove_prefix(1);
      if (weak != lexicon_.foodstuffs_[at].weak && twin == at) {
        twin = static_cast<std::uint32_t>(lexicon_.foodstuffs_.size());
        auto other = lexicon_.foodstuffs_[at];
        other.weak = weak;
        lexicon_.foodstuffs_.push_back(std::move(other));
        simple_forms_.emplace_back();
      }
      lexicon_.foodstuff_phrases_.add(form, weak == lexicon_.foodstuffs_[at].weak ? at : twin);
    }
    if (t.cell(row, "base").empty()) simple_forms_[at] = simple(row.cells[0], forms);
  }

  // What compounds are made with: the name, the forms of one word, and those that are one of these taken apart ("pine
  // apple"). Not "ripe pineapple": its last word finds the compound as well.
  std::vector<std::vector<std::uint32_t>> simple(std::string_view name, const std::vector<std::string_view>& forms) {
    auto& phrases = lexicon_.foodstuff_phrases_;
    std::vector<std::vector<std::uint32_t>> out = {phrases.numbers(name)};
    std::vector<std::string> whole = {written_together(name)};
    for (const auto form : forms)
      if (form.front() != '~' && !several_words(form)) {
        out.push_back(phrases.numbers(form));
        whole.emplace_back(form);
      }
    for (const auto form : forms)
      if (several_words(form) && std::find(whole.begin(), whole.end(), written_together(form)) != whole.end())
        out.push_back(phrases.numbers(form));
    return out;
  }

  // The foodstuff of that name, made now if the table has none.
  std::uint32_t composed(const Compound& c, std::uint32_t whole) {
    const auto& base = lexicon_.foodstuffs_[whole];
    const auto name = with_x(c.name, base.name);
    const auto [at, fresh] =
        lexicon_.foodstuff_by_name_.emplace(name, static_cast<std::uint32_t>(lexicon_.foodstuffs_.size()));
    if (fresh) {
      Foodstuff made{name, c.kind == "-" ? base.kind : std::string(c.kind), base.name, false};
      lexicon_.foodstuffs_.push_back(std::move(made));
    }
    return at->second;
  }

  void compose(const Compound& c, std::uint32_t whole) {
    const auto made = composed(c, whole);
    auto& phrases = lexicon_.foodstuff_phrases_;
    for (const auto& pattern : c.patterns) {
      const auto begin = phrases.place(0, pattern.before);
      for (const auto& form : simple_forms_[whole])
        phrases.claim(phrases.place(phrases.place(begin, form), pattern.after), made);
      if (pattern.part != none) lexicon_.parts_.emplace(static_cast<std::uint64_t>(pattern.part) << 32 | whole, made);
    }
  }

  Pattern pattern(std::string_view text) {
    const auto x = text.find('X');
    Pattern out{lexicon_.foodstuff_phrases_.numbers(text.substr(0, x)),
                lexicon_.foodstuff_phrases_.numbers(text.substr(x + 1)), none};
    if (const auto part = part_word(text); !part.empty()) {
      out.part = part_count_;
      if (lexicon_.part_phrases_.add(part, part_count_))
        ++part_count_;
      else
        lexicon_.part_phrases_.find(part, out.part);
    }
    return out;
  }

  Outcome<void> compounds() {
    const auto t = table("compounds", {"name", "kind", "of", "patterns"});
    if (!t) return tl::unexpected(t.error());
    std::vector<std::uint32_t> simple;
    for (std::uint32_t i = 0; i < simple_forms_.size(); ++i)
      if (!simple_forms_[i].empty()) simple.push_back(i);
    lexicon_.foodstuff_phrases_.reserve(lexicon_.foodstuff_phrases_.size() + 40 * simple.size());
    lexicon_.foodstuffs_.reserve(lexicon_.foodstuffs_.size() + 8 * simple.size());
    lexicon_.foodstuff_by_name_.reserve(lexicon_.foodstuffs_.capacity());
    for (const auto& row : t->rows) {
      Compound c{t->cell(row, "name"), t->cell(row, "kind"), parts_of(t->cell(row, "of")), {}};
      for (const auto text : parts_of(t->cell(row, "patterns"))) {
        if (text.find('X') == std::string_view::npos)
          return fault(fmt::format("the pattern \"{}\" has no X", text), "write X where the foodstuff's name stands",
                       t->file_of(row), row.line);
        c.patterns.push_back(pattern(text));
      }
      for (const auto i : simple) {
        const auto& food = lexicon_.foodstuffs_[i];
        if (std::any_of(c.of.begin(), c.of.end(), [&](auto of) { return of == food.kind || of == food.name; }))
          compose(c, i);
      }
    }
    return {};
  }

  Outcome<void> measures() {
    const auto t = table("measure-words", {"name", "kind", "forms"});
    if (!t) return tl::unexpected(t.error());
    fill(*t, lexicon_.measures_, lexicon_.measure_phrases_, true, [&](const Table::Row& r) {
      return MeasureWord{std::string(t->cell(r, "name")), std::string(t->cell(r, "kind"))};
    });
    for (std::size_t i = 0; i < lexicon_.measures_.size(); ++i)
      lexicon_.measure_by_name_.emplace(lexicon_.measures_[i].name, static_cast<std::uint32_t>(i));
    return {};
  }

  Outcome<void> operations() {
    const auto t = table("operations", {"op", "form", "forms"});
    if (!t) return tl::unexpected(t.error());
    fill(*t, lexicon_.operations_, lexicon_.operation_phrases_, false, [&](const Table::Row& r) {
      return OperationWord{std::string(t->cell(r, "op")), std::string(t->cell(r, "form"))};
    });
    return {};
  }

  Outcome<void> dish_kinds() {
    const auto t = table("dish-kinds", {"name", "family", "forms"});
    if (!t) return tl::unexpected(t.error());
    fill(*t, lexicon_.dish_kinds_, lexicon_.dish_kind_phrases_, true, [&](const Table::Row& r) {
      return DishKind{std::string(t->cell(r, "name")), std::string(t->cell(r, "family"))};
    });
    return {};
  }

  Outcome<void> spellings() {
    const auto t = table("spellings", {"modern", "forms"});
    if (!t) return tl::unexpected(t.error());
    for (const auto* row : by_claim(*t)) {
      const auto value = static_cast<std::uint32_t>(lexicon_.spellings_.size());
      lexicon_.spellings_.emplace_back(t->cell(*row, "modern"));
      for (const auto form : parts_of(t->cell(*row, "forms"))) lexicon_.spelling_phrases_.add(form, value);
    }
    return {};
  }

  Lexicon& lexicon_;
  const std::string& overlay_;
  Digest digest_;
  std::uint32_t part_count_ = 0;
  std::vector<std::vector<std::vector<std::uint32_t>>>
      simple_forms_;  ///< foodstuff -> name and one-word forms; none for compounds
};

Outcome<std::shared_ptr<const Lexicon>> Lexicon::load(const std::string& overlay_folder) {
  auto out = std::make_shared<Lexicon>();
  if (auto done = Filling(*out, overlay_folder).run(); !done) return tl::unexpected(done.error());
  return std::shared_ptr<const Lexicon>(std::move(out));
}

}  // namespace gallipot
