// gallipot measure: what did an old measure hold?
#include "query/measuring/measure.h"

#include <fmt/format.h>

#include <chrono>
#include <ctime>

#include "indexer/catalogue/country.h"
#include "query/reporting/evidence.h"
#include "query/reporting/measuring.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  MeasureQuestion question;
  bool evidence = false, table = false, forget = false;
  std::string decide, note, for_book;
  int from = 0, to = 0;
};

/// What the verb answers from: the general tables, or a shelf where an index is named.
struct Ground {
  std::optional<Shelf> shelf;
  std::shared_ptr<const Register> measures;
  std::shared_ptr<const Heats> heats;
  std::shared_ptr<const Lexicon> lexicon;
  std::string decisions;  ///< path; empty where there is none
};

/// The register without an index, and the decisions where a file of them is named.
Outcome<std::shared_ptr<const Register>> without_index(const Asked& asked) {
  auto tables = Register::load(asked.tables);
  if (!tables || asked.decisions.empty()) return tables;
  auto decisions = read_decisions(asked.decisions);
  if (!decisions) {
    complain(decisions.error().sentence());
    return tables;
  }
  return (*tables)->with({{}, {}, std::move(*decisions)});
}

Outcome<Ground> ground_of(const Asked& asked) {
  Ground out;
  out.decisions = asked.decisions;
  if (asked.index.empty()) {
    auto measures = without_index(asked);
    if (!measures) return tl::unexpected(measures.error());
    out.measures = std::move(*measures);
  } else {
    auto shelf = open_shelf(asked);
    if (!shelf) return tl::unexpected(shelf.error());
    out.measures = shelf->measures();
    out.shelf = std::move(*shelf);
    if (out.decisions.empty()) out.decisions = decisions_beside(asked.index);
  }
  auto heats = Heats::load(asked.tables);
  if (!heats) return tl::unexpected(heats.error());
  auto lexicon = Lexicon::load(asked.tables);
  if (!lexicon) return tl::unexpected(lexicon.error());
  out.heats = std::move(*heats);
  out.lexicon = std::move(*lexicon);
  return out;
}

/// A book of the shelf by its id. Faults: no index, or no such book - with the nearest.
Outcome<const Book*> book_called(const std::string& id, const Ground& ground) {
  if (!ground.shelf) return fault(fmt::format("the book \"{}\" is looked for in no index", id), "name it: --index DIR");
  if (const Book* book = ground.shelf->book(id)) return book;
  std::vector<std::string> known;
  for (const Book& one : ground.shelf->books()) known.push_back(one.id);
  const std::string near = nearest_word(id, known);
  return fault(fmt::format("the index has no book \"{}\"", id), near.empty()
                                                                    ? std::string("take an id from the shelf list")
                                                                    : fmt::format("perhaps \"{}\" is meant", near));
}

/// The question with the country's letters in order, and of a book its year and country where none are given.
Outcome<MeasureQuestion> question_of(const Asked& asked, const Ground& ground) {
  MeasureQuestion q = asked.question;
  if (!q.country.empty()) {
    auto country = country_named(q.country);
    if (!country) return tl::unexpected(country.error());
    q.country = std::move(*country);
  }
  if (q.book.empty()) q.book = asked.for_book;
  if (q.book.empty()) return q;
  const auto book = book_called(q.book, ground);
  if (!book) return tl::unexpected(book.error());
  if (q.year == 0) q.year = (*book)->year();
  if (q.country.empty()) q.country = (*book)->country;
  return q;
}

std::string today() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  return fmt::format("{:04}-{:02}-{:02}", local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

Outcome<bool> has_file(const Ground& ground) {
  if (ground.decisions.empty())
    return fault("there is no file for your decisions", "name the index they are for, or say --decisions FILE");
  return true;
}

Outcome<Exit> decide(const Asked& asked, const Ground& ground, const MeasureAnswer& answer) {
  if (auto file = has_file(ground); !file) return tl::unexpected(file.error());
  auto decision = decision_of(asked.decide, answer, *ground.measures, *ground.lexicon);
  if (!decision) return tl::unexpected(decision.error());
  if (asked.from > 0 && asked.to > 0 && asked.from > asked.to)
    return fault(fmt::format("no year is from {} to {}", asked.from, asked.to),
                 fmt::format("say --from {} --to {}", asked.to, asked.from));
  decision->book = asked.for_book;
  decision->from = asked.from;
  decision->to = asked.to;
  if (asked.for_book.empty() && (asked.from > 0 || asked.to > 0)) decision->country = answer.asked.country;
  decision->note = asked.note;
  decision->decided = today();
  if (auto kept = record_decision(ground.decisions, *decision); !kept) return tl::unexpected(kept.error());
  say(fmt::format("Decided: {}.\nKept in {}.\n", decision_in_words(*decision), ground.decisions));
  return Exit::answered;
}

/// Drops the decision by which the question is answered now.
Outcome<Exit> forget(const Ground& ground, const MeasureAnswer& answer) {
  if (auto file = has_file(ground); !file) return tl::unexpected(file.error());
  if (auto readable = read_decisions(ground.decisions); !readable) return tl::unexpected(readable.error());
  if (!answer.reading.decision) {
    complain(fmt::format("No decision of yours rules \"{}\" there.", answer.asked.words));
    return Exit::nothing_found;
  }
  const auto dropped = forget_decision(ground.decisions, *answer.reading.decision);
  if (!dropped) return tl::unexpected(dropped.error());
  say(fmt::format("Forgotten: {}.\n", decision_in_words(*answer.reading.decision)));
  return *dropped ? Exit::answered : Exit::nothing_found;
}

/// What the books of an index say of their own measures.
Outcome<Exit> tell_evidence(const Asked& asked) {
  if (asked.index.empty())
    return fault("--evidence shows what the books of an index say", "name the index: --index DIR");
  const auto shelf = open_shelf(asked);
  if (!shelf) return tl::unexpected(shelf.error());
  const auto statements = shelf->statements();
  if (!statements) return tl::unexpected(statements.error());
  say(asked.json ? evidence_as_json(*statements) : evidence_as_text(*statements, *shelf, text_style()));
  return statements->empty() ? Exit::nothing_found : Exit::answered;
}

Outcome<Exit> tell_table(const Asked& asked) {
  constexpr std::size_t dozen = 12;
  if (asked.index.empty()) return fault("--table counts the measures of an index", "name the index: --index DIR");
  const auto ground = ground_of(asked);
  if (!ground) return tl::unexpected(ground.error());
  const auto usual = usual_measures(*ground->shelf, *ground->lexicon, dozen);
  if (!usual) return tl::unexpected(usual.error());
  say(usual_as_text(*usual));
  return usual->empty() ? Exit::nothing_found : Exit::answered;
}

Outcome<Exit> tell_measure(const Asked& asked) {
  if (asked.evidence) return tell_evidence(asked);
  if (asked.table) return tell_table(asked);
  if (asked.question.words.empty())
    return fault("\"measure\" is given no amount", "say it as a recipe would: \"half a small teacup\"");
  if (!asked.decide.empty() && asked.forget)
    return fault("a decision cannot be made and forgotten at once", "say --decide or --forget");
  const auto ground = ground_of(asked);
  if (!ground) return tl::unexpected(ground.error());
  const auto question = question_of(asked, *ground);
  if (!question) return tl::unexpected(question.error());
  const auto answer = gallipot::measure(*question, *ground->measures, *ground->heats, *ground->lexicon);
  if (!answer) return tl::unexpected(answer.error());
  if (!asked.decide.empty()) return decide(asked, *ground, *answer);
  if (asked.forget) return forget(*ground, *answer);
  say(asked.json ? measure_as_json(*answer) : measure_as_text(*answer, text_style()));
  return Exit::answered;
}

void add_options(CLI::App& verb, Asked& asked) {
  verb.add_option("amount", asked.question.words, "The amount as it is printed: \"half a small teacup\"")
      ->type_name("WORDS");
  verb.add_option("--of", asked.question.of, "The stuff that is measured")->type_name("STUFF");
  verb.add_option("--year", asked.question.year, "Year of printing, 1500 to 1950")->type_name("YEAR");
  verb.add_option("--country", asked.question.country, "Where it was printed, as two letters: GB, US")->type_name("CC");
  verb.add_option("--book", asked.question.book, "In this book of the index")->type_name("ID");
  add_index_option(verb, asked)->required(false);
  add_tables_option(verb, asked);
  add_decisions_option(verb, asked);
  add_json_option(verb, asked);
  verb.add_option("--decide", asked.decide, "Decide what it is, as in \"90 ml\", for every later answer")
      ->type_name("AMOUNT");
  verb.add_option("--note", asked.note, "With --decide: why")->type_name("WORDS");
  verb.add_option("--for-book", asked.for_book, "With --decide: in this book only")->type_name("ID");
  verb.add_option("--from", asked.from, "With --decide: in books of --country printed from this year on")
      ->type_name("YEAR");
  verb.add_option("--to", asked.to, "With --decide: up to this year")->type_name("YEAR");
  verb.add_flag("--forget", asked.forget, "Drop the decision by which it is answered now");
  verb.add_flag("--evidence", asked.evidence, "Show what the books of an index say of their own measures");
  verb.add_flag("--table", asked.table, "The twelve household measures that an index uses most, as a table");
}

}  // namespace

void add_measure(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("measure", "Read an old measure as an honest range, with the evidence");
  const auto asked = std::make_shared<Asked>();
  add_options(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot measure \"half a small teacup\" --year 1885 --country GB --of \"grated ginger\"\n"
      "  gallipot measure \"a slow oven\"\n"
      "  gallipot measure \"a teacup\" --index shelf --decide 150ml --note \"the cup on the dresser\"\n\n"
      "It works without an index too; with one, what its books say of their own measures is heard.");
  verb->callback([&work, asked] { work = [asked] { return tell_measure(*asked); }; });
}

}  // namespace gallipot::program
