// gallipot lineage and gallipot families as their user runs them: answers, exit codes, faults in one line.
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

struct Said {
  int exit = -1;
  std::string out, err;
};

class LineageProgram : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = fs::temp_directory_path() / ("gallipot-lineage-program-" + std::to_string(::getpid()));
    fs::create_directories(folder_);
    const std::string books = std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json";
    ASSERT_EQ(run("index --catalogue '" + books + "' --index '" + (folder_ / "shelf").string() + "'").exit, 0);
  }
  static void TearDownTestSuite() { fs::remove_all(folder_); }

  static Said run(const std::string& arguments) {
    Said said;
    const std::string err = (folder_ / "err").string();
    const std::string command =
        "env -u GALLIPOT_INDEX COLUMNS=100 " GALLIPOT_PROGRAM " " + arguments + " 2>'" + err + "'";
    FILE* pipe = ::popen(command.c_str(), "r");
    if (pipe == nullptr) return said;
    std::array<char, 4096> piece{};
    for (std::size_t n = 0; (n = std::fread(piece.data(), 1, piece.size(), pipe)) > 0;)
      said.out.append(piece.data(), n);
    const int status = ::pclose(pipe);
    if (WIFEXITED(status)) said.exit = WEXITSTATUS(status);
    std::ifstream in(err);
    said.err.assign(std::istreambuf_iterator<char>(in), {});
    return said;
  }
  static Said ask(const std::string& verb, const std::string& more) {
    return run(verb + " --index '" + (folder_ / "shelf").string() + "' " + more);
  }
  static void expect_fault(const Said& said, const std::string& words) {
    EXPECT_EQ(said.exit, 2) << said.out;
    EXPECT_EQ(said.out, "");
    EXPECT_NE(said.err.find(words), std::string::npos) << said.err;
    EXPECT_EQ(said.err.find('\n'), said.err.size() - 1) << said.err;
  }
  /// A recipe of the sample that was copied from an earlier book.
  static std::string copied() {
    rapidjson::Document json;
    json.Parse(ask("lineage", "--book dalgarnoch-1808 --json").out.c_str());
    if (json.HasParseError() || json["results"].Empty()) return {};
    return json["results"][0]["pairs"][0]["id"].GetString();
  }

  static inline fs::path folder_;
};

TEST_F(LineageProgram, TheLineageOfARecipeIsToldInTextJsonAndCsv) {
  const std::string id = copied();
  ASSERT_FALSE(id.empty());
  const Said text = ask("lineage", "--of " + id);
  EXPECT_EQ(text.exit, 0) << text.err;
  for (const char* part : {"Lineage of", "Earlier witnesses", "wimbrell-1752", "Stemma", " 1752"})
    EXPECT_NE(text.out.find(part), std::string::npos) << part << "\n" << text.out;
  rapidjson::Document json;
  json.Parse(ask("lineage", "--json --of " + id).out.c_str());
  ASSERT_FALSE(json.HasParseError());
  ASSERT_GE(json["results"].Size(), 1u);
  const auto& first = json["results"][0];
  EXPECT_GT(first["verbatim"].GetDouble(), 0.4);
  EXPECT_LE(first["verbatim"].GetDouble(), 1);
  EXPECT_STREQ(first["order"].GetString(), "earlier");
  ASSERT_GE(first["changes"].Size(), 1u);
  EXPECT_STREQ(first["changes"][0]["kind"].GetString(), "amount");
  EXPECT_GE(json["stemma"].Size(), 2u);
  const Said csv = ask("lineage", "--csv --of " + id);
  EXPECT_TRUE(csv.out.starts_with("earlier,later,kind,stuff,was,is\r\n")) << csv.out;
}

TEST_F(LineageProgram, AnAuthorsLaterEditionShowsInTheFirstLines) {
  const Said text = ask("lineage", "--book oldacre-1857");
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.substr(0, 500).find("author's own earlier book"), std::string::npos) << text.out;
}

TEST_F(LineageProgram, NothingFoundIsSaidAndExitsOne) {
  const Said oldest = ask("lineage", "--of wimbrell-1752/0001");
  EXPECT_EQ(oldest.exit, oldest.out.empty() ? 1 : 0) << oldest.err;
  const Said none = ask("families", "--dish zeppelin");
  EXPECT_EQ(none.exit, 1);
  EXPECT_NE(none.err.find("No dish of this shelf is called \"zeppelin\""), std::string::npos) << none.err;
}

TEST_F(LineageProgram, BadUseIsAFaultWithAMend) {
  expect_fault(ask("lineage", ""), "wants either a recipe or a book");
  expect_fault(ask("lineage", "--of oldacre-1857/9999"), "oldacre-1857/");
  expect_fault(ask("lineage", "--book oldacre-1867"), "oldacre-1857");
  expect_fault(ask("lineage", "--book oldacre-1857 --csv"), "--of");
  expect_fault(ask("lineage", "--of oldacre-1857/0001 --limit 0"), "limit");
  expect_fault(ask("families", "--limit 0"), "limit");
}

TEST_F(LineageProgram, FamiliesAreListed) {
  const Said text = ask("families", "--limit 5");
  EXPECT_EQ(text.exit, 0) << text.err;
  EXPECT_NE(text.out.find("families"), std::string::npos);
  rapidjson::Document json;
  json.Parse(ask("families", "--limit 5 --json").out.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_EQ(json["results"].Size(), 5u);
  EXPECT_GE(json["results"][0]["books"].GetInt(), 4);
}

}  // namespace
}  // namespace gallipot
