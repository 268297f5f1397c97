// What the verbs share: options, opening, printing.
#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

constexpr unsigned no_terminal = 100;
constexpr unsigned narrowest = 40;

unsigned terminal_width() {
  if (isatty(STDOUT_FILENO) != 0) {
    winsize size{};
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  }
  if (const char* columns = std::getenv("COLUMNS")) {
    const long value = std::strtol(columns, nullptr, 10);
    if (value > 0 && value < 10000) return static_cast<unsigned>(value);
  }
  return no_terminal;
}

}  // namespace

CLI::Option* add_index_option(CLI::App& verb, Common& common) {
  return verb.add_option("--index", common.index, "Folder of the index (or set GALLIPOT_INDEX)")
      ->type_name("DIR")
      ->envname("GALLIPOT_INDEX")
      ->required();
}

void add_tables_option(CLI::App& verb, Common& common) {
  verb.add_option("--tables", common.tables, "Folder of tables of your own, laid over the built-in ones")
      ->type_name("DIR");
}

void add_decisions_option(CLI::App& verb, Common& common) {
  verb.add_option("--decisions", common.decisions, "File of your decisions; without it the one beside the index")
      ->type_name("FILE");
}

void add_json_option(CLI::App& verb, Common& common) { verb.add_flag("--json", common.json, "Answer in JSON"); }

Outcome<Shelf> open_shelf(const Common& common) {
  auto shelf = Shelf::open(common.index, {common.tables, common.decisions});
  if (shelf)
    for (const Fault& doubt : shelf->doubts()) complain(doubt.sentence());
  return shelf;
}

Outcome<Opened> open(const Common& common) {
  auto shelf = open_shelf(common);
  if (!shelf) return tl::unexpected(shelf.error());
  auto lexicon = Lexicon::load(common.tables);
  if (!lexicon) return tl::unexpected(lexicon.error());
  return Opened{std::move(*shelf), std::move(*lexicon)};
}

void say(const std::string& text) { std::fwrite(text.data(), 1, text.size(), stdout); }

void complain(const std::string& sentence) {
  std::string line = sentence;
  for (char& c : line)
    if (c == '\n' || c == '\r') c = ' ';
  std::fprintf(stderr, "gallipot: %s\n", line.c_str());
}

TextStyle text_style(bool printed, bool full) { return {std::max(narrowest, terminal_width()), printed, full}; }

Outcome<bool> write_file(const std::string& path, const std::string& bytes) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  const bool written = file != nullptr && std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  const int cause = errno;
  if (file == nullptr || (std::fclose(file) != 0) || !written)
    return fault(path + " cannot be written: " + std::strerror(cause), "name a file in a folder that you may write to");
  return true;
}

}  // namespace gallipot::program
