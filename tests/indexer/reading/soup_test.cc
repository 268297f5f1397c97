// Whatever a file holds, the blocks keep their promises: random soups of tags, marks and text, and a second opinion
// from gumbo's tree on which letters are print.
#include <gtest/gtest.h>
#include <gumbo.h>

#include <algorithm>
#include <array>
#include <random>
#include <string>

#include "indexer/reading/read.h"

namespace gallipot {
namespace {

void expect_sound(const ReadBook& book, std::size_t lines_in_file, const std::string& input) {
  std::uint32_t last_line = 0;
  for (const Block& b : book.blocks) {
    ASSERT_FALSE(b.lines.empty()) << input;
    ASSERT_EQ(b.lines.front().at, 0u) << input;
    ASSERT_GE(b.line_start(), 1u) << input;
    ASSERT_GE(b.line_end, b.lines.back().line) << input;
    ASSERT_LE(b.line_end, lines_in_file) << input;
    ASSERT_GE(b.line_start(), last_line) << input;
    last_line = b.line_start();
    ASSERT_EQ(b.text.empty(), b.kind == Block::Kind::rule) << input;
    const auto size = static_cast<std::uint32_t>(b.text.size());
    for (std::size_t i = 1; i < b.lines.size(); ++i) {
      ASSERT_LE(b.lines[i - 1].at, b.lines[i].at) << input;
      ASSERT_LT(b.lines[i].at, size) << input;
    }
    std::uint32_t at = 0;
    for (const Run& run : b.runs) {
      ASSERT_LT(run.span.begin, run.span.end) << input;
      ASSERT_LE(run.span.end, size) << input;
      ASSERT_GE(run.span.begin, at) << input;
      at = run.span.begin;
    }
    at = 0;
    for (const Span& cell : b.cells) {
      ASSERT_LE(cell.begin, cell.end) << input;
      ASSERT_LE(cell.end, size) << input;
      ASSERT_GE(cell.begin, at) << input;
      at = cell.end;
    }
    at = 0;
    for (const PageStart& page : b.pages) {
      ASSERT_LT(page.at, size) << input;
      ASSERT_GE(page.at, at) << input;
      at = page.at;
    }
    for (std::size_t i = 0; i + 1 < b.text.size(); ++i)
      ASSERT_FALSE(b.text[i] == ' ' && b.text[i + 1] == ' ') << input << "\n" << b.text;
    ASSERT_TRUE(b.text.empty() || (b.text.front() != ' ' && b.text.back() != ' ')) << input << "\n" << b.text;
  }
}

template <std::size_t N>
std::string soup(std::mt19937& random, const std::array<const char*, N>& pieces, std::size_t most) {
  std::string out;
  for (std::size_t i = 0, n = random() % most; i < n; ++i) out += pieces[random() % N];
  return out;
}

std::size_t count_lines(const std::string& s) {
  return 1 + static_cast<std::size_t>(std::count(s.begin(), s.end(), '\n'));
}

TEST(Soup, HtmlBlocksAreSound) {
  static constexpr std::array<const char*, 64> pieces = {"<p>",
                                                         "</p>",
                                                         "<b>",
                                                         "</b>",
                                                         "<i class='x'>",
                                                         "</i>",
                                                         "<table>",
                                                         "</table>",
                                                         "<tr>",
                                                         "</tr>",
                                                         "<td>",
                                                         "</td>",
                                                         "<th>",
                                                         "<ul>",
                                                         "</ul>",
                                                         "<li>",
                                                         "<h3>",
                                                         "</h3>",
                                                         "<div class='poem'>",
                                                         "</div>",
                                                         "<br/>",
                                                         "<hr>",
                                                         "<pre>",
                                                         "</pre>",
                                                         "<span class='pagenum'>",
                                                         "</span>",
                                                         "<a id='Page_3'>",
                                                         "</a>",
                                                         "[4]",
                                                         "12",
                                                         "<a href='#Page_9'>",
                                                         "word",
                                                         "wo-\nrd",
                                                         "-",
                                                         "\n",
                                                         " ",
                                                         "\r\n",
                                                         "&eacute;",
                                                         "&#769;",
                                                         "&nbsp;",
                                                         "&",
                                                         "<",
                                                         ">",
                                                         "\"",
                                                         "do.",
                                                         "1 cup ",
                                                         "<sup>1</sup>",
                                                         "/2",
                                                         "<div style='display:none'>",
                                                         "<style>p{color:red}",
                                                         "</style>",
                                                         "<!--",
                                                         "-->",
                                                         "<dl>",
                                                         "<dt>",
                                                         "<dd>",
                                                         "</dl>",
                                                         "<p class='footnote'>",
                                                         "[Pg 7]",
                                                         "{8}",
                                                         "\xC3\xA9",
                                                         "\xE2\x80\x9C",
                                                         "<center>",
                                                         "</center>"};
  std::mt19937 random(20);
  for (int round = 0; round < 6000; ++round) {
    const std::string input = "<html><body>" + soup(random, pieces, 60);
    const auto book = read_book(input, "s.htm");
    if (book) expect_sound(*book, count_lines(input), input);
    if (HasFatalFailure()) return;
  }
}

TEST(Soup, PlainTextBlocksAreSound) {
  static constexpr std::array<const char*, 40> pieces = {"\n",
                                                         "\n\n",
                                                         "\r\n",
                                                         " ",
                                                         "    ",
                                                         "\t",
                                                         "word",
                                                         "CAPITALS",
                                                         "_",
                                                         "=",
                                                         "*",
                                                         "+",
                                                         "^{o}",
                                                         "_{2}",
                                                         "[",
                                                         "]",
                                                         "[12]",
                                                         "{13}",
                                                         "[Pg 14]",
                                                         "-15-",
                                                         "16\n",
                                                         "[Illustration: ",
                                                         "[Footnote 1: ",
                                                         "[Sidenote: ",
                                                         "[Transcriber's note ",
                                                         "* * *\n",
                                                         "......",
                                                         "1 cup",
                                                         "2 \" cream",
                                                         "do.",
                                                         "over-\n",
                                                         "night",
                                                         "\xC3\xA9",
                                                         "CONTENTS\n",
                                                         "Soup   23\n",
                                                         "a long row of words that runs on to the measure of the page",
                                                         ",,",
                                                         ".",
                                                         "INDEX\n\n",
                                                         "~"};
  std::mt19937 random(30);
  for (int round = 0; round < 6000; ++round) {
    const std::string input = soup(random, pieces, 80);
    const auto book = read_book(input, "s.txt");
    if (book) expect_sound(*book, count_lines(input), input);
    if (HasFatalFailure()) return;
  }
}

void collect(const GumboNode* node, std::string& out) {
  if (node->type == GUMBO_NODE_TEXT || node->type == GUMBO_NODE_WHITESPACE) {
    for (const char* c = node->v.text.text; *c; ++c)
      if (static_cast<unsigned char>(*c) > ' ' && *c != '|') out += *c;
  }
  if (node->type != GUMBO_NODE_ELEMENT) return;
  const auto& children = node->v.element.children;
  for (unsigned i = 0; i < children.length; ++i) collect(static_cast<const GumboNode*>(children.data[i]), out);
}

// A tree builder moves text that stands loose in tables; so the letters are compared sorted.
TEST(Soup, NoLetterIsLostThatGumboSees) {
  static constexpr std::array<const char*, 34> pieces = {
      "<p>",    "</p>", "<b>",   "</b>", "<i>",  "</i>",  "<table>", "</table>", "<tr>",     "</tr>",    "<td>",
      "</td>",  "<ul>", "</ul>", "<li>", "<h3>", "</h3>", "<div>",   "</div>",   "<br/>",    "<center>", "</center>",
      "a",      "b",    "c",     "d",    "e",    "f",     "\n",      " ",        "&eacute;", "< ",       "<blockquote>",
      "</span>"};
  std::mt19937 random(40);
  for (int round = 0; round < 4000; ++round) {
    const std::string input = "<html><body>" + soup(random, pieces, 60);
    GumboOutput* tree = gumbo_parse_with_options(&kGumboDefaultOptions, input.data(), input.size());
    std::string expected, got;
    collect(tree->root, expected);
    gumbo_destroy_output(&kGumboDefaultOptions, tree);
    const auto book = read_book(input, "s.htm");
    if (book)
      for (const Block& block : book->blocks)
        for (const char c : block.text)
          if (static_cast<unsigned char>(c) > ' ' && c != '|') got += c;
    std::sort(expected.begin(), expected.end());
    std::sort(got.begin(), got.end());
    ASSERT_EQ(got, expected) << input;
  }
}

TEST(Soup, HostileFilesEndInTime) {
  const std::string many(2'000'000, '<');
  EXPECT_TRUE(read_book("<html>x" + many, "t.htm").has_value());
  EXPECT_TRUE(read_book(std::string(5'000'000, 'a'), "t.txt").has_value());
  for (const char* piece : {"_a ",
                            "[",
                            "{1} ",
                            "&",
                            "&#",
                            "&abcdefgh",
                            "=x= ",
                            "a-\nb ",
                            "[Illustration: x\n\n",
                            "[12]\n\n",
                            "12\n\n",
                            "<b>",
                            "<p><i>",
                            "<td>",
                            "<table>",
                            "</b>",
                            "<a id='p1'>x",
                            "<li>",
                            "<!--",
                            "\"",
                            "<pre>\n",
                            "1 \" x\n\n",
                            "<span class='pagenum'>",
                            "<div class='c",
                            "CONTENTS\n\n",
                            "Soup 3\n\n",
                            "^{",
                            "_{",
                            "-\n"}) {
    std::string html = "<html><body>x", text = "x";
    for (int i = 0; i < 60000; ++i) html += piece, text += piece;
    const auto book = read_book(html, "t.htm");
    EXPECT_TRUE(book || book.error().what.ends_with("this is not a book as transcriptions come")) << piece;
    EXPECT_TRUE(read_book(text, "t.txt").has_value()) << piece;
  }
}

}  // namespace
}  // namespace gallipot
