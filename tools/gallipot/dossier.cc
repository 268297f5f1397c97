// gallipot dossier: what the cook keeps of a dish.
#include "query/dossier/dossier.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "query/dossier/entries.h"
#include "query/dossier/keep.h"
#include "query/dossier/trials.h"
#include "query/reporting/dossier_report.h"
#include "query/reporting/layout.h"
#include "tools/gallipot/verbs.h"
#include "tools/reading_room/visit.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string what, name;
  std::vector<std::string> words;
  std::string dossiers, title, question, reason, about, why, batch = "1", change, verdict, as = "markdown";
  bool chosen = false;
};

using Done = Outcome<Exit>;

Done told(const Outcome<Dossier>& dossier, const std::string& words) {
  if (!dossier) return tl::unexpected(dossier.error());
  say(fmt::format("{}: {} (version {})\n", dossier->name, words, dossier->revision));
  return Exit::answered;
}

Outcome<bool> wants(const Asked& asked, std::size_t words, const char* which) {
  if (asked.words.size() >= words) return true;
  return fault(fmt::format("\"dossier {}\" is not told {}", asked.what, which), "see \"gallipot dossier --help\"");
}

Done list(const Asked& asked) {
  const auto all = list_dossiers(asked.dossiers);
  for (const ListedDossier& one : all) {
    const std::string counts =
        fmt::format("{} recipes, {} trials, changed {}", one.recipes, one.trials, one.changed.substr(0, 10));
    say(paragraph(one.fault.empty() ? fmt::format("{}   {}", one.title, counts) : one.fault, text_style().width,
                  padded(one.name, 24) + "  "));
  }
  if (all.empty()) complain("There is no dossier yet; begin one with \"gallipot dossier begin NAME\".");
  return all.empty() ? Exit::nothing_found : Exit::answered;
}

Done begin(const Asked& asked) {
  return told(begin_dossier(asked.dossiers, asked.name, asked.title, asked.question), "begun");
}

/// Changes the dossier, with what it says of the shelf brought up to date.
Done change(const Asked& asked, const Shelf& shelf, const std::string& words,
            const std::function<Outcome<bool>(Dossier&)>& what) {
  return told(change_dossier(asked.dossiers, asked.name,
                             [&](Dossier& dossier) {
                               auto done = what(dossier);
                               if (done) bring_up_to_date(dossier, shelf);
                               return done;
                             }),
              words);
}

Done keep(const Asked& asked, const Opened& opened, DossierRecipe::Standing standing) {
  if (auto enough = wants(asked, 1, "which recipes"); !enough) return tl::unexpected(enough.error());
  return change(asked, opened.shelf, fmt::format("{} {}", standing_name(standing), fmt::join(asked.words, ", ")),
                [&](Dossier& dossier) -> Outcome<bool> {
                  for (const std::string& id : asked.words) {
                    if (const auto recipe = opened.shelf.recipe(id); !recipe) return tl::unexpected(recipe.error());
                    put_in(dossier, id, standing, true, asked.reason);
                  }
                  return true;
                });
}

Done write_words(const Asked& asked, const Opened& opened, std::string DossierRecipe::*where) {
  if (auto enough = wants(asked, 2, "of which recipe, and the words"); !enough) return tl::unexpected(enough.error());
  return change(asked, opened.shelf, "written", [&](Dossier& dossier) -> Outcome<bool> {
    DossierRecipe* one = dossier.recipe(asked.words[0]);
    if (one == nullptr)
      return fault(fmt::format("the dossier has no recipe \"{}\"", asked.words[0]), "keep it in the dossier first");
    one->*where = asked.words[1];
    return true;
  });
}

Done decide(const Asked& asked, const Opened& opened) {
  if (auto enough = wants(asked, 1, "what was decided"); !enough) return tl::unexpected(enough.error());
  return change(asked, opened.shelf, "decided", [&](Dossier& dossier) -> Outcome<bool> {
    dossier.decisions.push_back({today(), asked.about, asked.words[0], asked.why});
    return true;
  });
}

void show_amounts(const Trial& trial) {
  for (const TrialAmount& one : trial.amounts)
    say(fmt::format(
        "  {}{}\n", padded(one.stuff, 24),
        one.amount ? fmt::format("{:.4g}{}", *one.amount, one.unit == "count" ? "" : " " + one.unit) : "as printed"));
}

Done next(const Asked& asked, const Opened& opened) {
  if (auto enough = wants(asked, 1, "which recipe to cook from"); !enough) return tl::unexpected(enough.error());
  const auto recipe = opened.shelf.recipe(asked.words[0]);
  if (!recipe) return tl::unexpected(recipe.error());
  const auto batch = room::cooks_number(asked.batch);
  if (!batch) return fault(fmt::format("\"{}\" is no batch", asked.batch), "write a number, such as 1/2 or 2");
  Trial made;
  auto done = change(asked, opened.shelf, "the next trial", [&](Dossier& dossier) -> Outcome<bool> {
    auto trial = next_trial(dossier, *recipe, *batch, asked.change, *opened.lexicon);
    if (!trial) return tl::unexpected(trial.error());
    made = *trial;
    dossier.trials.push_back(std::move(*trial));
    return true;
  });
  if (!done) return done;
  say(fmt::format("Trial {}, {}{}\n", made.number, made.batch, made.changes.empty() ? "" : ": " + made.changes));
  show_amounts(made);
  return done;
}

Done taste(const Asked& asked, const Opened& opened) {
  if (auto enough = wants(asked, 2, "of which trial, and how it tasted"); !enough)
    return tl::unexpected(enough.error());
  const auto number = room::whole_number(asked.words[0]);
  return change(asked, opened.shelf, "tasted", [&](Dossier& dossier) -> Outcome<bool> {
    for (Trial& trial : dossier.trials) {
      if (!number || trial.number != static_cast<unsigned long>(*number)) continue;
      trial.tasting = asked.words[1];
      if (!asked.verdict.empty()) trial.verdict = asked.verdict;
      return true;
    }
    return fault(fmt::format("the dossier has no trial {}", asked.words[0]), "see \"gallipot dossier show\"");
  });
}

Done show(const Asked& asked, const Opened& opened, bool whole) {
  const auto dossier = open_dossier(asked.dossiers, asked.name);
  if (!dossier) return tl::unexpected(dossier.error());
  const auto yardstick = Yardstick::load(opened.shelf.measures(), asked.tables);
  if (!yardstick) return tl::unexpected(yardstick.error());
  const auto exported = export_dossier(*dossier, opened.shelf, *yardstick,
                                       whole        ? asked.as
                                       : asked.json ? "json"
                                                    : "markdown");
  if (!exported) return tl::unexpected(exported.error());
  say(exported->bytes);
  return Exit::answered;
}

Done earlier(const Asked& asked) {
  if (asked.words.empty()) {
    const auto revisions = earlier_revisions(asked.dossiers, asked.name);
    for (const unsigned one : revisions) say(fmt::format("{}\n", one));
    return revisions.empty() ? Exit::nothing_found : Exit::answered;
  }
  const auto number = room::whole_number(asked.words[0]);
  if (!number || *number < 1)
    return fault(fmt::format("\"{}\" is no version", asked.words[0]),
                 "take a number that \"gallipot dossier earlier\" shows");
  const auto dossier = earlier_dossier(asked.dossiers, asked.name, static_cast<unsigned>(*number));
  if (!dossier) return tl::unexpected(dossier.error());
  say(dossier_as_json(*dossier));
  return Exit::answered;
}

constexpr std::array<const char*, 12> doings = {"list",   "begin", "keep",  "strike", "note",  "caption",
                                                "decide", "try",   "taste", "show",   "write", "earlier"};

Done dossier(Asked asked) {
  if (asked.dossiers.empty()) asked.dossiers = asked.index + ".dossiers";
  if (std::find(doings.begin(), doings.end(), asked.what) == doings.end())
    return fault(fmt::format("\"dossier\" does nothing called \"{}\"", asked.what),
                 fmt::format("take one of {}", fmt::join(doings, ", ")));
  if (asked.what == "list") return list(asked);
  if (asked.name.empty())
    return fault(fmt::format("\"dossier {}\" is not told which dossier", asked.what),
                 "name it; \"gallipot dossier list\" shows them");
  if (asked.what == "begin") return begin(asked);
  if (asked.what == "earlier") return earlier(asked);
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  using Standing = DossierRecipe::Standing;
  if (asked.what == "keep") return keep(asked, *opened, asked.chosen ? Standing::chosen : Standing::kept);
  if (asked.what == "strike") return keep(asked, *opened, Standing::struck);
  if (asked.what == "note") return write_words(asked, *opened, &DossierRecipe::note);
  if (asked.what == "caption") return write_words(asked, *opened, &DossierRecipe::caption);
  if (asked.what == "decide") return decide(asked, *opened);
  if (asked.what == "try") return next(asked, *opened);
  if (asked.what == "taste") return taste(asked, *opened);
  return show(asked, *opened, asked.what == "write");
}

void add_options(CLI::App& verb, Asked& asked) {
  verb.add_option("doing", asked.what,
                  "list, begin, keep, strike, note, caption, decide, try, taste, show, write or earlier")
      ->type_name("DOING")
      ->required();
  verb.add_option("name", asked.name, "The dossier")->type_name("NAME");
  verb.add_option("words", asked.words, "Ids of recipes, and words, as below")->type_name("WORDS");
  add_index_option(verb, asked);
  verb.add_option("--dossiers", asked.dossiers, "Folder of your dossiers; without it INDEX.dossiers")->type_name("DIR");
  verb.add_option("--title", asked.title, "With begin: what it is called")->type_name("WORDS");
  verb.add_option("--question", asked.question, "With begin: what is to be found out")->type_name("WORDS");
  verb.add_flag("--chosen", asked.chosen, "With keep: to be cooked");
  verb.add_option("--reason", asked.reason, "With keep and strike: why")->type_name("WORDS");
  verb.add_option("--about", asked.about, "With decide: of what")->type_name("WORDS");
  verb.add_option("--why", asked.why, "With decide: because")->type_name("WORDS");
  verb.add_option("--batch", asked.batch, "With try: so many times the last trial, or the recipe for the first")
      ->type_name("N")
      ->capture_default_str();
  verb.add_option("--change", asked.change, "With try: what to change, as in \"turn the ginger down by a third\"")
      ->type_name("WORDS");
  verb.add_option("--verdict", asked.verdict, "With taste: the verdict")->type_name("WORDS");
  verb.add_option("--as", asked.as, "With write: html, markdown, csl, bibtex, ris, csv or json")
      ->type_name("FORM")
      ->capture_default_str();
  add_tables_option(verb, asked);
  add_json_option(verb, asked);
}

}  // namespace

void add_dossier(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("dossier", "Keep a dish: its question, recipes, notes, decisions and trials");
  const auto asked = std::make_shared<Asked>();
  add_options(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot dossier begin damson --index shelf --title \"Damson catsup\"\n"
      "  gallipot dossier keep damson oldacre-1838/0019 --index shelf --chosen\n"
      "  gallipot dossier note damson oldacre-1838/0019 \"the oldest\" --index shelf\n"
      "  gallipot dossier try damson oldacre-1838/0019 --batch 1/4 --index shelf\n"
      "  gallipot dossier try damson oldacre-1838/0019 --change \"turn the ginger down by a third\" --index shelf\n"
      "  gallipot dossier taste damson 2 \"rounder\" --verdict \"this one\" --index shelf\n"
      "  gallipot dossier write damson --as html --index shelf > damson.html");
  verb->callback([&work, asked] { work = [asked] { return dossier(*asked); }; });
}

}  // namespace gallipot::program
