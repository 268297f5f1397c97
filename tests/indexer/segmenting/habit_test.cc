// One invented book, printed in twenty habits: each must be cut into the same receipts.
#include <functional>

#include "sample_book.h"

namespace gallipot {
namespace {

struct Habit {
  std::string name, file;
  std::function<std::string(const Dish&, int)> print;
  std::function<std::string(const std::string&)> head;
};

std::string upper(std::string s) {
  for (auto& c : s) c = static_cast<char>(c >= 'a' && c <= 'z' ? c - 32 : c);
  return s;
}

std::string wrapped(const std::string& s) {
  std::string out;
  std::size_t line = 0;
  for (const char c : s) {
    if (c == ' ' && line > 66) {
      out += '\n';
      line = 0;
      continue;
    }
    out += c;
    ++line;
  }
  return out;
}

std::string h2(const std::string& t) { return "<h2>" + t + "</h2>\n"; }
std::string p(const std::string& t) { return "<p>" + t + "</p>\n"; }
std::string line(const std::string& t) { return "\n\n" + t + "\n\n"; }

std::vector<Habit> habits() {
  const auto html = [](const std::string& name, auto print) { return Habit{name, "book.htm", print, h2}; };
  const auto text = [](const std::string& name, auto print) { return Habit{name, "book.txt", print, line}; };
  using D = const Dish&;
  return {
      html("heading below the chapter", [](D d, int) { return "<h3>" + d.title + ".</h3>\n" + p(d.body); }),
      html("heading of the chapter's own level", [](D d, int) { return h2(d.title) + p(d.body); }),
      html("centred paragraph", [](D d, int) { return "<p class=\"center\">" + d.title + "</p>\n" + p(d.body); }),
      html("term and description",
           [](D d, int) { return "<dl><dt>" + d.title + "</dt>\n<dd>" + d.body + "</dd></dl>\n"; }),
      html("small capitals run in",
           [](D d, int) { return p("<span class=\"smcap\">" + d.title + ".</span>&mdash;" + d.body); }),
      html("italics run in", [](D d, int) { return p("<i>" + d.title + ".</i> " + d.body); }),
      html("bold run in without a point", [](D d, int) { return p("<b>" + d.title + "</b> " + d.body); }),
      html("bold line broken off", [](D d, int) { return p("<b>" + d.title + "</b><br />\n" + d.body); }),
      html("table cell",
           [](D d, int) { return "<table><tr><td>" + upper(d.title) + "</td></tr></table>\n" + p(d.body); }),
      html("underlined line", [](D d, int) { return p("<u>" + d.title + "</u>") + p(d.body); }),
      html("number and capitals run in",
           [](D d, int n) { return p(std::to_string(n) + ". " + upper(d.title) + ". " + d.body); }),
      html("number and dash, nothing set",
           [](D d, int n) { return p(std::to_string(n) + ". " + d.title + ".&mdash;" + d.body); }),
      text("capitals alone", [](D d, int) { return "\n\n" + upper(d.title) + ".\n\n" + wrapped(d.body) + "\n"; }),
      text("title case alone", [](D d, int) { return "\n\n" + d.title + "\n\n" + wrapped(d.body) + "\n"; }),
      text("number, dash, capitals alone",
           [](D d, int n) {
             return "\n" + std::to_string(n) + ".--" + upper(d.title) + ".\n\n" + wrapped(d.body) + "\n";
           }),
      text("capitals run in", [](D d, int) { return "\n" + wrapped(upper(d.title) + ". " + d.body) + "\n"; }),
      text("capitals and dash run in", [](D d, int) { return "\n" + wrapped(upper(d.title) + ".--" + d.body) + "\n"; }),
      text("italics and dash run in", [](D d, int) { return "\n" + wrapped("_" + d.title + "_--" + d.body) + "\n"; }),
      text("to make, nothing set",
           [](D d, int) { return "\n" + wrapped("To make " + d.title + ". " + d.body) + "\n"; }),
      text("title case run in, nothing set", [](D d, int) { return "\n" + wrapped(d.title + ". " + d.body) + "\n"; }),
  };
}

class EveryHabit : public ::testing::TestWithParam<Habit> {};

TEST_P(EveryHabit, CutsEachDishAndNothingElse) {
  const auto& habit = GetParam();
  const bool html = habit.file.ends_with(".htm");
  const auto talk = [&] { return html ? p(essay()) : "\n" + wrapped(essay()) + "\n"; };
  std::string book = html ? "<html><body>\n" : "";
  book += habit.head("PREFACE") + talk() + talk();
  int n = 0;
  for (const auto& d : dishes()) {
    if (n == 0) book += habit.head("FIRST COURSES") + talk();
    if (n == 10) book += habit.head("SECOND COURSES") + talk();
    book += habit.print(d, ++n);
  }
  book += html ? "</body></html>\n" : "\n";
  const auto made = cut(book, habit.file);
  std::vector<std::string> want, got;
  for (const auto& d : dishes()) want.push_back(upper(d.title));
  for (const auto& r : made.recipes)
    got.push_back(upper(r.title.starts_with("To make ") ? r.title.substr(8) : r.title));
  EXPECT_EQ(got, want) << made.habit;
  for (std::size_t i = 0; i < std::min(made.recipes.size(), want.size()); ++i)
    EXPECT_EQ(made.recipes[i].text, dishes()[i].body);
}

std::string test_name(const ::testing::TestParamInfo<Habit>& info) {
  std::string out;
  for (const char c : info.param.name)
    if (std::isalnum(static_cast<unsigned char>(c))) out += c;
  return out;
}
INSTANTIATE_TEST_SUITE_P(Reprints, EveryHabit, ::testing::ValuesIn(habits()), test_name);

}  // namespace
}  // namespace gallipot
