// Prints the blocks of a book as the reading room makes them, for people who look at the reading.
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include <CLI/CLI.hpp>
#include <cstdio>
#include <string>

#include "indexer/reading/read.h"

namespace {

using gallipot::Block;

const char* kind_name(Block::Kind kind) {
  switch (kind) {
    case Block::Kind::heading:
      return "heading";
    case Block::Kind::paragraph:
      return "paragraph";
    case Block::Kind::list_item:
      return "list_item";
    case Block::Kind::table_row:
      return "table_row";
    case Block::Kind::verse:
      return "verse";
    case Block::Kind::note:
      return "note";
    case Block::Kind::caption:
      return "caption";
    case Block::Kind::rule:
      return "rule";
  }
  return "";
}

std::string style_name(std::uint16_t style) {
  static constexpr const char* names[] = {"italic",    "bold", "small_caps", "superscript", "sidenote",
                                          "note_mark", "link", "underline",  "large"};
  std::string out;
  for (std::size_t i = 0; i < std::size(names); ++i)
    if ((style >> i) & 1u) out += (out.empty() ? "" : "+") + std::string(names[i]);
  return out.empty() ? "plain" : out;
}

void print_json(const Block& b) {
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> w(buffer);
  w.StartObject();
  w.Key("kind"), w.String(kind_name(b.kind));
  w.Key("level"), w.Int(b.level);
  w.Key("style"), w.String(b.style);
  w.Key("text"), w.String(b.text);
  w.Key("page"), w.String(b.page);
  w.Key("line_end"), w.Uint(b.line_end);
  w.Key("anchor"), w.String(b.anchor);
  w.Key("indent"), w.Uint(b.indent);
  w.Key("blank_before"), w.Uint(b.blank_before);
  w.Key("centred"), w.Bool(b.centred);
  w.Key("right_aligned"), w.Bool(b.right_aligned);
  w.Key("contents"), w.Bool(b.contents);
  w.Key("lines"), w.StartArray();
  for (const auto& l : b.lines) w.StartArray(), w.Uint(l.at), w.Uint(l.line), w.EndArray();
  w.EndArray();
  w.Key("pages"), w.StartArray();
  for (const auto& p : b.pages) w.StartArray(), w.Uint(p.at), w.String(p.page), w.EndArray();
  w.EndArray();
  w.Key("cells"), w.StartArray();
  for (const auto& c : b.cells) w.StartArray(), w.Uint(c.begin), w.Uint(c.end), w.EndArray();
  w.EndArray();
  w.Key("runs"), w.StartArray();
  for (const auto& r : b.runs)
    w.StartArray(), w.Uint(r.span.begin), w.Uint(r.span.end), w.String(style_name(r.style)), w.String(r.name),
        w.EndArray();
  w.EndArray();
  w.EndObject();
  std::printf("%s\n", buffer.GetString());
}

void print_text(const Block& b) {
  std::printf("%u-%u p.%s %s%s%s%s%s [%s]\n", b.line_start(), b.line_end, b.page.empty() ? "?" : b.page.c_str(),
              kind_name(b.kind), b.level ? std::to_string(b.level).c_str() : "", b.centred ? " centred" : "",
              b.right_aligned ? " right" : "", b.contents ? " contents" : "", b.style.c_str());
  if (b.indent || b.blank_before) std::printf("    indent %u, %u blank lines before\n", b.indent, b.blank_before);
  for (const auto& r : b.runs)
    std::printf("    %s %s: %.*s\n", style_name(r.style).c_str(), r.name.c_str(), static_cast<int>(r.span.size()),
                b.text.c_str() + r.span.begin);
  for (const auto& p : b.pages) std::printf("    page %s from byte %u\n", p.page.c_str(), p.at);
  std::printf("  %s\n", b.text.c_str());
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Prints the blocks of a book as they are read.");
  std::string path;
  bool json = false;
  std::uint32_t from = 0, to = UINT32_MAX;
  app.add_option("book", path, "the book, plain text or HTML")->required();
  app.add_flag("--json", json, "one JSON object a line");
  app.add_option("--from", from, "first raw line of the file to show");
  app.add_option("--to", to, "last raw line of the file to show");
  CLI11_PARSE(app, argc, argv);
  const auto book = gallipot::read_book_file(path);
  if (!book) {
    std::fprintf(stderr, "%s\n", book.error().sentence().c_str());
    return 2;
  }
  for (const auto& block : book->blocks)
    if (block.line_end >= from && block.line_start() <= to) json ? print_json(block) : print_text(block);
  if (!json) {
    std::printf("%zu blocks, %zu page marks, %s, %s\n", book->blocks.size(), book->page_marks, book->format.c_str(),
                book->charset.c_str());
    for (const auto& doubt : book->doubts) std::printf("%s\n", doubt.sentence().c_str());
  }
  return 0;
}
