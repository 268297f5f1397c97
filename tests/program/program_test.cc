// Drives the program as a person would: answers, exit codes, and faults told in one line.
#include <gtest/gtest.h>
#include <rapidjson/document.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace gallipot {
namespace {

namespace fs = std::filesystem;

struct Ran {
  int exit = -1;
  std::string out, err;
};

class Program : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = fs::temp_directory_path() / ("gallipot-program-test-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
    const Ran built = run("index --catalogue '" + sample() + "' --index '" + index() + "'");
    ASSERT_EQ(built.exit, 0) << built.err;
    summary_ = built.out;
  }
  static void TearDownTestSuite() { fs::remove_all(folder_); }

  static std::string sample() { return std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json"; }
  static std::string index() { return (folder_ / "shelf").string(); }

  static Ran run(const std::string& arguments) {
    Ran out;
    const std::string err = (folder_ / "err").string();
    const std::string command =
        "env -u GALLIPOT_INDEX COLUMNS=100 " GALLIPOT_PROGRAM " " + arguments + " 2>'" + err + "'";
    FILE* pipe = ::popen(command.c_str(), "r");
    if (pipe == nullptr) return out;
    std::array<char, 4096> piece{};
    for (std::size_t n = 0; (n = std::fread(piece.data(), 1, piece.size(), pipe)) > 0;) out.out.append(piece.data(), n);
    const int status = ::pclose(pipe);
    if (WIFEXITED(status)) out.exit = WEXITSTATUS(status);
    std::ifstream in(err);
    out.err.assign(std::istreambuf_iterator<char>(in), {});
    return out;
  }

  /// The verb with the index, and more.
  static Ran ask(const std::string& verb, const std::string& more) {
    return run(verb + " --index '" + index() + "' " + more);
  }

  /// A misuse or bad input: exit 2, nothing answered, one line on standard error with these words.
  static void expect_fault(const Ran& ran, const std::string& words) {
    EXPECT_EQ(ran.exit, 2) << ran.out << ran.err;
    EXPECT_EQ(ran.out, "");
    ASSERT_FALSE(ran.err.empty());
    EXPECT_EQ(ran.err.find('\n'), ran.err.size() - 1) << ran.err;
    EXPECT_NE(ran.err.find(words), std::string::npos) << ran.err;
  }

  /// The id of the best hit for a dish.
  static std::string best(const std::string& dish) {
    rapidjson::Document json;
    json.Parse(ask("find", dish + " --limit 1 --json").out.c_str());
    if (json.HasParseError() || json["results"].Empty()) return {};
    return json["results"][0]["id"].GetString();
  }

  static inline fs::path folder_;
  static inline std::string summary_;
};

TEST_F(Program, EvidenceIsWhatTheBooksSayOfTheirMeasures) {
  const Ran list = ask("measure", "--evidence");
  EXPECT_EQ(list.exit, 0) << list.err;
  EXPECT_NE(list.out.find("\nteacup\n"), std::string::npos) << list.out;
  EXPECT_NE(list.out.find("One teacupful is a gill and a half"), std::string::npos) << list.out;
  const Ran ran = ask("measure", "--evidence --json");
  EXPECT_EQ(ran.exit, 0) << ran.err;
  rapidjson::Document json;
  json.Parse(ran.out.c_str());
  ASSERT_FALSE(json.HasParseError()) << ran.out;
  ASSERT_GT(json["statements"].Size(), 30u);
  for (const auto& s : json["statements"].GetArray()) {
    for (const char* field : {"book", "measure", "quote"}) EXPECT_TRUE(s[field].IsString()) << field;
    EXPECT_GT(s["line"].GetUint(), 0u);
    EXPECT_EQ(s["unit"].IsNull(), s["equals"].IsNull());
  }
  expect_fault(run("measure --evidence"), "name the index");
}

TEST_F(Program, IndexTellsWhatItRead) {
  EXPECT_NE(summary_.find(" recipes of 12 books"), std::string::npos) << summary_;
  EXPECT_NE(summary_.find("measures stated"), std::string::npos) << summary_;
  EXPECT_NE(summary_.find("pellowe-1884"), std::string::npos) << summary_;
}

TEST_F(Program, HelpAndVersionAnswer) {
  const Ran help = run("--help");
  EXPECT_EQ(help.exit, 0);
  EXPECT_NE(help.out.find("gallipot index --catalogue"), std::string::npos);
  for (const char* verb : {"index", "find", "variants", "compare", "cite", "cook", "shopping", "export", "check"}) {
    const Ran one = run(std::string(verb) + " --help");
    EXPECT_EQ(one.exit, 0) << verb;
    EXPECT_NE(one.out.find("Example"), std::string::npos) << one.out;
  }
  const Ran version = run("--version");
  EXPECT_EQ(version.exit, 0);
  EXPECT_EQ(version.out, "gallipot " GALLIPOT_VERSION "\n");
}

TEST_F(Program, FindAnswersInTextAndJson) {
  const Ran text = ask("find", "damson catsup");
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.find("Damson"), std::string::npos) << text.out;
  rapidjson::Document json;
  json.Parse(ask("find", "damson catsup --limit 3 --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  ASSERT_LE(json["results"].Size(), 3U);
  ASSERT_GE(json["results"].Size(), 2U);
  EXPECT_GE(json["results"][0]["score"].GetDouble(), json["results"][1]["score"].GetDouble());
}

TEST_F(Program, FindKeepsToItsLimits) {
  rapidjson::Document json;
  json.Parse(ask("find", "damson --from 1800 --to 1850 --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  ASSERT_FALSE(json["results"].Empty());
  for (const auto& hit : json["results"].GetArray()) {
    const int year = std::stoi(hit["year"].GetString());
    EXPECT_GE(year, 1800);
    EXPECT_LE(year, 1850);
  }
}

TEST_F(Program, CookAnswersInEveryForm) {
  const std::string id = best("damson catsup");
  ASSERT_FALSE(id.empty());
  const Ran text = ask("cook", id);
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.find("WHAT GOES IN"), std::string::npos);
  rapidjson::Document json;
  json.Parse(ask("cook", id + " --scale 0.5 --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_DOUBLE_EQ(json["batch"]["factor"].GetDouble(), 0.5);
  EXPECT_EQ(ask("cook", id + " --html").out.rfind("<!DOCTYPE html>", 0), 0U);
  EXPECT_EQ(ask("cook", id + " --calendar --start 2027-03-06T09:00").out.rfind("BEGIN:VCALENDAR\r\n", 0), 0U);
  rapidjson::Document linked;
  linked.Parse(ask("cook", id + " --linked").out.c_str());
  ASSERT_FALSE(linked.HasParseError());
  EXPECT_STREQ(linked["@type"].GetString(), "Recipe");
}

TEST_F(Program, ShoppingMergesRecipes) {
  const std::string one = best("damson catsup"), other = best("quince marmalade");
  ASSERT_FALSE(one.empty() || other.empty());
  const Ran list = ask("shopping", one + " " + other + "@0.5");
  EXPECT_EQ(list.exit, 0) << list.err;
  EXPECT_NE(list.out.find("SHOPPING LIST"), std::string::npos);
  EXPECT_NE(list.out.find("0.5 times"), std::string::npos);
  expect_fault(ask("shopping", one + "@none"), "not a number");
  expect_fault(ask("shopping", one + "@0"), "cannot be scaled");
  expect_fault(ask("shopping", one + " " + one), "named twice");
}

TEST_F(Program, CookRefusesWhatCannotBe) {
  const std::string id = best("damson catsup");
  expect_fault(ask("cook", id + " --scale 0"), "cannot be scaled");
  expect_fault(ask("cook", id + " --scale=-2"), "cannot be scaled");
  expect_fault(ask("cook", id + " --scale 1e9"), "no batch");
  expect_fault(ask("cook", id + " --scale two"), "not a number");
  expect_fault(ask("cook", id + " --yield much"), "not an amount");
  expect_fault(ask("cook", id + " --have 'three unicorns'"), "no ingredient");
  expect_fault(ask("cook", id + " --start someday"), "not a date");
  expect_fault(ask("cook", id + " --start 2027-02-30"), "calendar has no day");
  expect_fault(ask("cook", id + " --scale 2 --yield 1l"), "set twice");
  expect_fault(ask("cook", id + " --calendar"), "needs a day");
  expect_fault(ask("cook", id + " --json --html"), "one form");
  expect_fault(ask("cook", "nobody-1800/0001"), "no recipe");
}

TEST_F(Program, NothingFoundIsOne) {
  const Ran none = ask("find", "zzyzx");
  EXPECT_EQ(none.exit, 1);
  EXPECT_NE(none.err.find("Nothing found for \"zzyzx\""), std::string::npos) << none.err;
  const Ran json = ask("find", "zzyzx --json");
  EXPECT_EQ(json.exit, 1);
  rapidjson::Document document;
  document.Parse(json.out.c_str());
  ASSERT_FALSE(document.HasParseError()) << json.out;
  EXPECT_TRUE(document["results"].Empty());
}

TEST_F(Program, VariantsByIdAndByWords) {
  const std::string id = best("damson catsup");
  ASSERT_FALSE(id.empty());
  rapidjson::Document json;
  json.Parse(ask("variants", "--of " + id + " --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  ASSERT_FALSE(json["results"].Empty());
  for (const auto& hit : json["results"].GetArray()) EXPECT_NE(hit["id"].GetString(), id);
  EXPECT_EQ(ask("variants", "damson catsup").exit, 0);
  expect_fault(ask("variants", ""), "wants either a recipe or the words of a dish");
}

TEST_F(Program, CompareInTextCsvAndJson) {
  const Ran text = ask("compare", "--dish 'damson catsup'");
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.find("Witnesses"), std::string::npos);
  rapidjson::Document json;
  json.Parse(ask("compare", "--dish 'damson catsup' --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_GE(json["witnesses"].Size(), 2U);
  const Ran csv = ask("compare", "--dish 'damson catsup' --csv");
  EXPECT_EQ(csv.exit, 0);
  EXPECT_EQ(csv.out.rfind("part,name,merged,witnesses,of,", 0), 0U) << csv.out.substr(0, 80);
  expect_fault(ask("compare", "--dish damson --csv --json"), "cannot be both CSV and JSON");
  expect_fault(ask("compare", ""), "wants either recipes, or a dish");
  const std::string id = best("damson catsup");
  expect_fault(ask("compare", id + " " + id), "is named twice");
  expect_fault(ask("compare", id + " --basis granite"), "no recipe here has \"granite\"");
  expect_fault(ask("compare", id + " --dish damson"), "wants either recipes, or a dish");
  expect_fault(ask("compare", "nobody-1800/0001"), "nobody-1800/0001");
  EXPECT_EQ(ask("compare", "--dish zzyzx").exit, 1);
}

TEST_F(Program, CompareSaysHowItsRecipesWereChosen) {
  const Ran dish = ask("compare", "--dish 'damson catsup'");
  EXPECT_NE(dish.out.find("Chosen: "), std::string::npos) << dish.out;
  const Ran variants = ask("compare", "--variants-of " + best("damson catsup"));
  EXPECT_EQ(variants.exit, 0) << variants.err;
  EXPECT_NE(variants.out.find("Chosen: "), std::string::npos) << variants.out;
  const Ran few = ask("compare", "--dish 'damson catsup' --limit 2 --json");
  rapidjson::Document json;
  json.Parse(few.out.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_EQ(json["witnesses"].Size(), 2U);
  EXPECT_GE(json["chosen"].Size(), 1U);
  expect_fault(ask("compare", "--variants-of nobody-1800/0001"), "nobody-1800/0001");
}

TEST_F(Program, CompareWritesAPageAndATableIntoFiles) {
  const fs::path page = folder_ / "page.html", table = folder_ / "table.csv";
  const Ran ran =
      ask("compare", "--dish 'damson catsup' --html '" + page.string() + "' --csv '" + table.string() + "'");
  EXPECT_EQ(ran.exit, 0) << ran.err;
  EXPECT_EQ(ran.out, "");
  const auto bytes = [](const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(in), {});
  };
  const std::string html = bytes(page);
  EXPECT_EQ(html.rfind("<!DOCTYPE html>", 0), 0U);
  EXPECT_NE(html.find("class=\"plot\""), std::string::npos);
  EXPECT_EQ(html.find("<script"), std::string::npos);
  EXPECT_EQ(bytes(table), ask("compare", "--dish 'damson catsup' --csv").out);
  expect_fault(ask("compare", "--dish damson --html '" + (folder_ / "no" / "page.html").string() + "'"),
               "cannot be written");
}

TEST_F(Program, CompareShowsWhatItCanOfOneRecipeOrOfUnlikeOnes) {
  const std::string id = best("damson catsup");
  const Ran one = ask("compare", id);
  EXPECT_EQ(one.exit, 0) << one.err;
  EXPECT_NE(one.out.find("One recipe alone"), std::string::npos) << one.out;
  const Ran unlike = ask("compare", id + " " + best("sponge cake") + " --basis batch");
  EXPECT_EQ(unlike.exit, 0) << unlike.err;
  EXPECT_NE(unlike.out.find("Witnesses"), std::string::npos);
}

TEST_F(Program, CiteGivesThePlaceAndRefusesWhatIsNotThere) {
  const std::string id = best("damson catsup");
  const Ran text = ask("cite", id);
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.find(id), std::string::npos);
  rapidjson::Document json;
  json.Parse(ask("cite", id + " --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_EQ(json["id"].GetString(), id);
  EXPECT_NE(std::string(json["note"].GetString()), "");
  expect_fault(ask("cite", "pellowe-1884/9999"), "pellowe-1884/");
  expect_fault(ask("cite", "pelowe-1884/0010"), "pellowe-1884");
}

TEST_F(Program, ExportIsOneRecipeALine) {
  const Ran all = ask("export", "");
  EXPECT_EQ(all.exit, 0);
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < all.out.size(); ++lines) {
    const std::size_t end = all.out.find('\n', begin);
    ASSERT_NE(end, std::string::npos);
    rapidjson::Document json;
    json.Parse(all.out.data() + begin, end - begin);
    ASSERT_FALSE(json.HasParseError()) << lines;
    EXPECT_TRUE(json.HasMember("ingredients"));
    begin = end + 1;
  }
  EXPECT_NE(summary_.find(std::to_string(lines) + " recipes"), std::string::npos);
}

TEST_F(Program, CheckFindsTheIndexWhole) {
  const Ran checked = ask("check", "");
  EXPECT_EQ(checked.exit, 0) << checked.err;
  EXPECT_NE(checked.out.find("The index is whole"), std::string::npos);
}

TEST_F(Program, MisuseIsOneSentenceWithTheNearest) {
  expect_fault(run(""), "no verb is given");
  expect_fault(run("finde"), "there is no verb \"finde\"; perhaps \"find\" is meant");
  expect_fault(run("quicksilver"), "take one of");
  expect_fault(run("--verson"), "perhaps \"--version\" is meant");
  expect_fault(ask("find", "damson --limt 3"), "\"find\" knows no option \"--limt\"; perhaps \"--limit\" is meant");
  expect_fault(ask("find", "damson --limit many"), "\"many\" after --limit is no whole number");
  expect_fault(ask("find", "damson --from early"), "\"early\" after --from is no year");
  expect_fault(ask("find", "damson --limit"), "--limit");
  expect_fault(ask("find", ""), "\"find\" is given no words");
  expect_fault(run("find damson"), "does not know which index");
  expect_fault(run("index --index x"), "does not know which books");
  expect_fault(ask("check", "it"), "\"check\" takes no word like \"it\"");
}

TEST_F(Program, LimitsThatCannotBeMeantAreFaults) {
  expect_fault(ask("find", "damson --limit 0"), "write 1 or more");
  expect_fault(ask("find", "damson --limit=-3"), "write 1 or more");
  expect_fault(ask("find", "damson --from 1900 --to 1800"), "no year is from 1900 to 1800");
  expect_fault(ask("find", "damson --country England"), "is no country's two letters");
  expect_fault(ask("find", "damson --book pelowe-1884"), "perhaps \"pellowe-1884\" is meant");
  expect_fault(ask("compare", "--dish damson --with nutmgeg"), "perhaps \"nutmeg\" is meant");
}

TEST_F(Program, StuffsAndCountriesAreUnderstoodAsSaid) {
  const Ran one = ask("find", "damson --with shallots --country gb --json");
  const Ran other = ask("find", "damson --with shallot --country GB --json");
  EXPECT_EQ(one.exit, 0) << one.err;
  EXPECT_EQ(one.out, other.out);
}

TEST_F(Program, WordsThatAreVerbsAreStillWords) {
  const Ran found = ask("find", "index check damson");
  EXPECT_NE(found.exit, 2) << found.err;
}

TEST_F(Program, BadInputNamesFileLineAndMend) {
  expect_fault(run("find --index '" + (folder_ / "nowhere").string() + "' damson"), "nowhere");
  expect_fault(run("index --catalogue '" + (folder_ / "none.json").string() + "' --index x"), "none.json");
  const fs::path list = folder_ / "list.json";
  std::ofstream(list) << "{\"books\": [\n {\"id\": \"a\", \"file\": \"a.txt\"}\n]}\n";
  expect_fault(run("index --catalogue '" + list.string() + "' --index '" + (folder_ / "i2").string() + "'"),
               "list.json:2");
  fs::create_directories(folder_ / "tables");
  std::ofstream(folder_ / "tables" / "sorts.tsv") << "sort\tstuff\tsource\nbullace\n";
  expect_fault(ask("compare", "--dish damson --tables '" + (folder_ / "tables").string() + "'"), "sorts.tsv:2");
}

TEST_F(Program, AShelfOfWhichNothingCanBeIndexedIsAFault) {
  const fs::path list = folder_ / "empty.json";
  std::ofstream(list) << "{\"books\": [{\"id\": \"a\", \"file\": \"no-such.txt\", \"title\": \"A\"}]}\n";
  const Ran ran = run("index --catalogue '" + list.string() + "' --index '" + (folder_ / "i3").string() + "'");
  EXPECT_EQ(ran.exit, 2) << ran.out << ran.err;
  EXPECT_NE((ran.out + ran.err).find("no-such.txt"), std::string::npos) << ran.out << ran.err;
}

TEST_F(Program, ADossierIsKeptFromQuestionToBibliography) {
  const std::string id = best("damson catsup");
  const std::string at = "--dossiers '" + (folder_ / "dossiers").string() + "' ";
  const auto dossier = [&](const std::string& words) { return ask("dossier " + words, at); };
  EXPECT_EQ(dossier("list").exit, 1);
  EXPECT_EQ(dossier("begin damson --title 'Damson catsup' --question 'How did it keep?'").exit, 0);
  EXPECT_EQ(dossier("keep damson " + id + " --chosen --reason 'the oldest'").exit, 0);
  EXPECT_EQ(dossier("note damson " + id + " 'to be shown'").exit, 0);
  const Ran first = dossier("try damson " + id + " --batch 1/4");
  EXPECT_EQ(first.exit, 0) << first.err;
  EXPECT_NE(first.out.find("Trial 1"), std::string::npos) << first.out;
  const Ran second = dossier("try damson " + id + " --change 'turn the ginger down by a third'");
  EXPECT_NE(second.out.find("Trial 2"), std::string::npos) << second.out << second.err;
  EXPECT_EQ(dossier("taste damson 2 'rounder' --verdict 'this one'").exit, 0);
  EXPECT_EQ(dossier("decide damson 'sloes will do' --about damsons").exit, 0);
  const Ran shown = dossier("show damson");
  EXPECT_NE(shown.out.find("to be shown"), std::string::npos) << shown.out << shown.err;
  EXPECT_NE(shown.out.find("[^1]: "), std::string::npos);
  EXPECT_NE(dossier("write damson --as bibtex").out.find("@incollection{"), std::string::npos);
  EXPECT_EQ(dossier("earlier damson").exit, 0);
  EXPECT_EQ(dossier("list").exit, 0);
  expect_fault(dossier("show dampson"), "there is no dossier \"dampson\"");
  expect_fault(dossier("try damson " + id + " --change 'a little less ginger'"), "does not say by how much");
  expect_fault(dossier("fold damson"), "take one of list");
  expect_fault(dossier("begin ../damson"), "cannot be the name of a dossier");
  expect_fault(dossier("keep damson pellowe-1884/9999"), "pellowe-1884");
}

TEST_F(Program, ARoomForOthersNeedsAnAddressAndAToken) {
  expect_fault(ask("serve", "--address 0.0.0.0"), "give both --address and --token");
  expect_fault(ask("serve", "--token abcdefabcdef"), "give both --address and --token");
  expect_fault(ask("serve", "--address 0.0.0.0 --token short"), "too short");
  expect_fault(ask("serve", "--port 70000"), "is no port");
}

}  // namespace
}  // namespace gallipot
