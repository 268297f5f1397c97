// How the program shows what it can be asked: what a verb is for, how it is said, its options, examples.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/layout.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

constexpr std::size_t first_column = 22;

/// "--limit N", "--json", "WORDS...".
std::string said(const CLI::Option& option) {
  const bool flag = option.get_expected_max() == 0;
  const std::string type = flag ? std::string() : option.get_type_name();
  if (option.get_lnames().empty()) return type + (option.get_expected_max() > 1 ? "..." : "");
  return "--" + option.get_lnames().front() + (type.empty() ? "" : " " + type);
}

std::string line(const std::string& term, const std::string& what, std::size_t width) {
  std::string first = "  " + padded(term, first_column);
  if (columns_of(term) >= first_column) first = "  " + term + "  ";
  return paragraph(what, width, first);
}

std::string option_line(const CLI::Option& option, std::size_t width) {
  std::string what = option.get_description();
  if (!option.get_default_str().empty()) what += "; " + option.get_default_str() + " if not said";
  return line(said(option), what, width);
}

class Help : public CLI::FormatterBase {
 public:
  std::string make_help(const CLI::App* app, std::string, CLI::AppFormatMode) const override {
    const std::size_t width = std::min(text_style().width, 110U);
    const auto verbs = app->get_subcommands([](const CLI::App*) { return true; });
    std::string out = app->get_description() + (verbs.empty() ? ".\n\n" : "\n\n");
    if (!verbs.empty()) {
      out += "Say: gallipot VERB and what the verb needs.\n\n";
      for (const CLI::App* verb : verbs) out += line(verb->get_name(), verb->get_description(), width);
    } else {
      out += "Say: gallipot " + app->get_name();
      for (const CLI::Option* option : app->get_options())
        if (option->get_required() && !option->get_positional()) out += " " + said(*option);
      for (const CLI::Option* option : app->get_options())
        if (option->get_positional())
          out += (option->get_required() ? " " : " [") + said(*option) + (option->get_required() ? "" : "]");
      out += '\n';
    }
    out += '\n';
    for (const CLI::Option* option : app->get_options()) out += option_line(*option, width);
    return out + "\n" + app->get_footer() + "\n";
  }
};

}  // namespace

std::shared_ptr<CLI::FormatterBase> help_pages() { return std::make_shared<Help>(); }

}  // namespace gallipot::program
