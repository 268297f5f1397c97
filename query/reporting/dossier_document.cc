// Sets a dossier as a document.
#include <fmt/format.h>

#include "query/reporting/bibliography.h"
#include "query/reporting/dossier_report.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

using Kind = DocumentPiece::Kind;

class Setting {
 public:
  Setting(const Dossier& dossier, const Shelf& shelf) : dossier_(dossier), shelf_(shelf) {}

  Document set() {
    out_.title = dossier_.title;
    out_.colophon = fmt::format("Dossier \"{}\", version {}, begun {}, last changed {}.", dossier_.name,
                                dossier_.revision, dossier_.begun, dossier_.changed.substr(0, 10));
    if (!dossier_.question.empty()) add(Kind::paragraph, dossier_.question);
    recipes(DossierRecipe::Standing::chosen, "Chosen to be cooked");
    recipes(DossierRecipe::Standing::kept, "The variants");
    struck();
    trials();
    decisions();
    out_.bibliography = printed_bibliography(citations_of(dossier_, shelf_));
    return std::move(out_);
  }

 private:
  DocumentPiece& add(Kind kind, std::string text) {
    out_.pieces.push_back({kind, std::move(text), {}, {}});
    return out_.pieces.back();
  }

  std::size_t note(const std::string& words) {
    out_.notes.push_back(words);
    return out_.notes.size();
  }

  void recipes(DossierRecipe::Standing standing, const char* head) {
    bool any = false;
    for (const DossierRecipe& one : dossier_.recipes) {
      if (one.standing != standing) continue;
      if (!any) add(Kind::chapter, head);
      any = true;
      recipe(one);
    }
  }

  void recipe(const DossierRecipe& one) {
    const auto found = shelf_.recipe(one.id);
    const Book* book = found ? shelf_.book(found->book) : nullptr;
    std::string title = one.title.empty() ? one.id : one.title, source = one.citation;
    if (book != nullptr) {
      const Citation citation = cite(*found, *book);
      if (!citation.title.empty()) title = citation.title;
      source = citation.note();
    }
    const std::size_t number = source.empty() ? 0 : note(source);
    DocumentPiece& head = add(Kind::section, title);
    if (number > 0) head.notes.push_back(number);
    if (!one.caption.empty()) add(Kind::paragraph, "Caption: " + one.caption);
    if (book != nullptr)
      for (const Part& part : found->recipe.parts) add(Kind::print, std::string(part.span.in(found->recipe.text)));
    else
      add(Kind::paragraph, "The book of this recipe is not on the shelf now.");
    if (!one.reason.empty()) add(Kind::paragraph, "In the set because: " + one.reason + ".");
    if (!one.note.empty()) add(Kind::paragraph, one.note);
  }

  void struck() {
    bool any = false;
    for (const DossierRecipe& one : dossier_.recipes) {
      if (one.standing != DossierRecipe::Standing::struck) continue;
      if (!any) add(Kind::chapter, "Struck out");
      any = true;
      std::string words = (one.title.empty() ? one.id : one.title) + " (" + one.id + ")";
      if (!one.note.empty()) words += ": " + one.note;
      DocumentPiece& piece = add(Kind::item, words);
      if (!one.citation.empty()) piece.notes.push_back(note(one.citation));
    }
  }

  void trials() {
    if (!dossier_.trials.empty()) add(Kind::chapter, "Trials");
    for (const Trial& trial : dossier_.trials) {
      add(Kind::section, fmt::format("Trial {}, {}", trial.number, trial.date));
      const DossierRecipe* of = dossier_.recipe(trial.of);
      std::string words =
          "From " + (of != nullptr && !of->title.empty() ? of->title + " (" + trial.of + ")" : trial.of);
      if (!trial.batch.empty()) words += "; " + trial.batch;
      if (!trial.changes.empty()) words += "; changed: " + trial.changes;
      add(Kind::paragraph, words + ".");
      DocumentPiece& table = add(Kind::table, "");
      table.rows.push_back({"Stuff", "Amount"});
      for (const TrialAmount& one : trial.amounts)
        table.rows.push_back({one.stuff, !one.amount           ? "as printed"
                                         : one.unit == "count" ? fmt::format("{:.4g}", *one.amount)
                                                               : fmt::format("{:.4g} {}", *one.amount, one.unit)});
      if (!trial.tasting.empty()) add(Kind::paragraph, "Tasted: " + trial.tasting);
      if (!trial.verdict.empty()) add(Kind::paragraph, "Verdict: " + trial.verdict);
    }
  }

  void decisions() {
    if (!dossier_.decisions.empty()) add(Kind::chapter, "Decisions");
    for (const DossierDecision& one : dossier_.decisions) {
      std::string words = one.about.empty() ? one.words : one.about + ": " + one.words;
      if (!one.why.empty()) words += ", because " + one.why;
      add(Kind::item, one.date.empty() ? words : words + " (" + one.date + ")");
    }
    if (!dossier_.corrections.empty()) add(Kind::chapter, "Corrections");
    for (const std::string& one : dossier_.corrections) add(Kind::item, one);
  }

  const Dossier& dossier_;
  const Shelf& shelf_;
  Document out_;
};

}  // namespace

Document document_of(const Dossier& dossier, const Shelf& shelf) { return Setting(dossier, shelf).set(); }

std::vector<Citation> citations_of(const Dossier& dossier, const Shelf& shelf) {
  std::vector<Citation> out;
  for (const std::string& id : dossier.standing_ids())
    if (auto citation = cite(shelf, id)) out.push_back(std::move(*citation));
  return out;
}

Outcome<Exported> export_dossier(const Dossier& dossier, const Shelf& shelf, const Yardstick& yardstick,
                                 std::string_view as) {
  if (as == "html") return Exported{"text/html; charset=utf-8", ".html", document_as_html(document_of(dossier, shelf))};
  if (as == "markdown")
    return Exported{"text/markdown; charset=utf-8", ".md", document_as_markdown(document_of(dossier, shelf))};
  if (as == "csl")
    return Exported{"application/vnd.citationstyles.csl+json", ".csl.json",
                    bibliography_as_csl(citations_of(dossier, shelf))};
  if (as == "bibtex")
    return Exported{"application/x-bibtex; charset=utf-8", ".bib",
                    bibliography_as_bibtex(citations_of(dossier, shelf))};
  if (as == "ris")
    return Exported{"application/x-research-info-systems; charset=utf-8", ".ris",
                    bibliography_as_ris(citations_of(dossier, shelf))};
  if (as == "json") return Exported{"application/json", ".dossier.json", dossier_as_json(dossier)};
  if (as == "csv") {
    std::vector<std::string> ids;
    for (const Citation& one : citations_of(dossier, shelf)) ids.push_back(one.id);
    if (ids.empty()) return fault("the dossier has no recipe to lay in a table", "keep one in it first");
    const auto comparison = compare(shelf, ids, yardstick);
    if (!comparison) return tl::unexpected(comparison.error());
    return Exported{"text/csv; charset=utf-8", ".csv", comparison_as_csv(*comparison)};
  }
  return fault(fmt::format("a dossier cannot be written as \"{}\"", as.substr(0, 40)),
               "take one of html, markdown, csl, bibtex, ris, csv, json");
}

}  // namespace gallipot
