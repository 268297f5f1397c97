// A dossier taken away: one document with numbered notes, and bibliographies that others read.
#include "query/reporting/dossier_report.h"

#include <gtest/gtest.h>
#include <rapidjson/document.h>

#include "query/reporting/bibliography.h"
#include "tests/query/sample_shelf.h"

namespace gallipot {
namespace {

class DossierReport : public SampleShelf {
 protected:
  static Dossier dossier() {
    Dossier out;
    out.name = "damson";
    out.title = "Damson <catsup> & *soy*";
    out.question = "By what did it keep?";
    out.begun = "2026-03-01";
    out.changed = "2026-03-02T10:00:00Z";
    out.recipes = {{"wimbrell-1752/0017", DossierRecipe::Standing::chosen, false, "named damson catsup", "", "",
                    "a [note]", "Seven years"},
                   {"oldacre-1838/0019", DossierRecipe::Standing::kept, true, "", "", "", "", ""},
                   {"gone-1800/0001", DossierRecipe::Standing::kept, false, "", "Lost Sauce", "Gone, 1800.", "", ""},
                   {"pellowe-1884/0014", DossierRecipe::Standing::struck, false, "", "Pickled Damsons",
                    "Pellowe, 1884.", "no catsup", ""}};
    out.trials = {{1,
                   "2026-03-02",
                   "wimbrell-1752/0017",
                   "a quarter",
                   "ginger down",
                   {{"ginger", 8.25, "g"}, {"salt", std::nullopt, ""}},
                   "hot",
                   "again"}};
    out.decisions = {{"2026-03-02", "damson", "sloes will do", "none to be had"}};
    return out;
  }
};

TEST_F(DossierReport, EachRecipeHasItsNumberedNote) {
  const Document document = document_of(dossier(), *shelf_);
  ASSERT_EQ(document.notes.size(), 4U);
  EXPECT_NE(document.notes[0].find("Hester Wimbrell"), std::string::npos);
  EXPECT_EQ(document.notes[2], "Gone, 1800.") << "what is not on the shelf is cited as it was kept";
  EXPECT_EQ(document.bibliography.size(), 2U);
  EXPECT_EQ(document.bibliography[0].rfind("Oldacre, Temperance. ", 0), 0U) << document.bibliography[0];
}

TEST_F(DossierReport, MarkdownAndHtmlEscapeWhatIsNotTheirs) {
  const Document document = document_of(dossier(), *shelf_);
  const std::string markdown = document_as_markdown(document), page = document_as_html(document);
  EXPECT_NE(markdown.find("# Damson \\<catsup\\> \\& \\*soy\\*"), std::string::npos) << markdown.substr(0, 200);
  EXPECT_NE(markdown.find("a \\[note\\]"), std::string::npos);
  EXPECT_NE(markdown.find("[^1]: Hester Wimbrell"), std::string::npos);
  EXPECT_NE(markdown.find("| ginger | 8.25 g |"), std::string::npos);
  EXPECT_NE(markdown.find("| salt | as printed |"), std::string::npos);
  EXPECT_NE(page.find("<h1>Damson &lt;catsup&gt; &amp; *soy*</h1>"), std::string::npos);
  EXPECT_NE(page.find("id=\"note-4\""), std::string::npos);
  EXPECT_NE(page.find("href=\"#note-1\""), std::string::npos);
}

TEST_F(DossierReport, EveryFormIsWrittenAndOthersAreRefused) {
  const auto yardstick = Yardstick::load(shelf_->measures()).value();
  for (const char* form : {"html", "markdown", "csl", "bibtex", "ris", "csv", "json"}) {
    const auto exported = export_dossier(dossier(), *shelf_, yardstick, form);
    ASSERT_TRUE(exported.has_value()) << form;
    EXPECT_FALSE(exported->bytes.empty()) << form;
  }
  EXPECT_FALSE(export_dossier(dossier(), *shelf_, yardstick, "docx").has_value());
  EXPECT_FALSE(export_dossier(Dossier{}, *shelf_, yardstick, "csv").has_value());
}

Citation citation() {
  Citation out;
  out.id = "plain-1850/0003";
  out.title = "Ketchup & Soy, 100% {pure}";
  out.contributor = "Mrs. M. P.";
  out.book.id = "plain-1850";
  out.book.title = "Plain Fare";
  out.book.creator = "Hannah van Plain and Mary Short";
  out.book.date = "1850~";
  out.book.place = "York";
  out.book.publisher = "Tidy & Sons";
  out.page = "12";
  out.page_end = "13";
  return out;
}

TEST(Bibliographies, CslHasTheRecipeInItsBook) {
  rapidjson::Document json;
  json.Parse(bibliography_as_csl({citation()}).c_str());
  ASSERT_FALSE(json.HasParseError());
  const auto& item = json[0];
  EXPECT_STREQ(item["type"].GetString(), "chapter");
  EXPECT_STREQ(item["author"][0]["literal"].GetString(), "Mrs. M. P.");
  EXPECT_STREQ(item["container-author"][0]["family"].GetString(), "van Plain");
  EXPECT_STREQ(item["container-author"][1]["given"].GetString(), "Mary");
  EXPECT_EQ(item["issued"]["date-parts"][0][0].GetInt(), 1850);
  EXPECT_TRUE(item["issued"]["circa"].GetBool());
  EXPECT_STREQ(item["page"].GetString(), "12-13");
}

TEST(Bibliographies, BibtexEscapesAndBalances) {
  const std::string bibtex = bibliography_as_bibtex({citation()});
  EXPECT_NE(bibtex.find("@incollection{plain-1850:0003,"), std::string::npos);
  EXPECT_NE(bibtex.find("Ketchup \\& Soy, 100\\% (pure)"), std::string::npos) << bibtex;
  EXPECT_NE(bibtex.find("pages = {12--13}"), std::string::npos);
  EXPECT_NE(bibtex.find("year = {1850}"), std::string::npos);
  EXPECT_EQ(std::count(bibtex.begin(), bibtex.end(), '{'), std::count(bibtex.begin(), bibtex.end(), '}'));
}

TEST(Bibliographies, RisIsOneFieldALine) {
  Citation two = citation();
  two.title = "Two\nLines";
  const std::string ris = bibliography_as_ris({citation(), two});
  EXPECT_EQ(ris.rfind("TY  - CHAP\r\n", 0), 0U);
  EXPECT_NE(ris.find("TI  - Two Lines\r\n"), std::string::npos);
  EXPECT_NE(ris.find("SP  - 12\r\nEP  - 13\r\n"), std::string::npos);
  EXPECT_NE(ris.find("ER  - \r\n"), std::string::npos);
}

TEST(Bibliographies, NamesAreParted) {
  const auto one = [](const char* text) { return parted_names(text); };
  EXPECT_EQ(one("Hannah Glade")[0].family, "Glade");
  EXPECT_EQ(one("Ann Mary Glade; John de Vere").size(), 2U);
  EXPECT_EQ(one("Ann Mary Glade; John de Vere")[1].family, "de Vere");
  for (const char* literal : {"A Lady", "The Ladies of the Chapel", "Mrs. M. P.", "Anonymous"})
    EXPECT_EQ(one(literal)[0].literal, literal);
  EXPECT_EQ(one("The Ladies of the Chapel and their Friends").size(), 1U);
  EXPECT_TRUE(one("").empty());
}

TEST(Bibliographies, YearsAreToldAsFarAsTheyAreKnown) {
  EXPECT_EQ(plain_year("1861")->first, 1861);
  EXPECT_TRUE(plain_year("1830~")->about);
  EXPECT_EQ(plain_year("1830/1835")->last, 1835);
  EXPECT_FALSE(plain_year("18XX").has_value());
  EXPECT_FALSE(plain_year("").has_value());
}

}  // namespace
}  // namespace gallipot
