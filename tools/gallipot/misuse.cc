// Turns what CLI11 says of a command line into one sentence with a mend.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

/// Letters to change, add, drop or swap with their neighbour to make one word of another.
/// Source: Damerau 1964, Communications of the ACM 7 (optimal string alignment).
std::size_t distance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> older, old(b.size() + 1), row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    older = old;
    old = row;
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({old[j] + 1, row[j - 1] + 1, old[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], older[j - 2] + 1);
    }
  }
  return row.back();
}

std::vector<std::string> verbs_of(const CLI::App& program) {
  std::vector<std::string> out;
  for (const CLI::App* verb : program.get_subcommands([](const CLI::App*) { return true; }))
    out.push_back(verb->get_name());
  return out;
}

std::vector<std::string> options_of(const CLI::App& verb) {
  std::vector<std::string> out;
  for (const CLI::Option* option : verb.get_options())
    for (const std::string& name : option->get_lnames()) out.push_back("--" + name);
  return out;
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

Fault unknown_verb(const CLI::App& program, const std::string& word) {
  const auto verbs = verbs_of(program);
  const std::string near = nearest_word(word, verbs);
  if (!near.empty())
    return {fmt::format("there is no verb \"{}\"", word), {}, 0, fmt::format("perhaps \"{}\" is meant", near)};
  return {fmt::format("there is no verb \"{}\"", word), {}, 0, "take one of " + listed(verbs)};
}

Fault unknown_option(const CLI::App& verb, const std::string& word) {
  const std::string name = word.substr(0, word.find('='));
  const auto options = options_of(verb);
  const std::string near = nearest_word(name, options);
  std::string what = fmt::format("\"{}\" knows no option \"{}\"", verb.get_name(), name);
  if (!near.empty()) return {std::move(what), {}, 0, fmt::format("perhaps \"{}\" is meant", near)};
  return {std::move(what), {}, 0, "it takes " + listed(options)};
}

}  // namespace

std::string nearest_word(const std::string& word, const std::vector<std::string>& known) {
  std::string best;
  std::size_t least = 0;
  for (const std::string& candidate : known) {
    const std::size_t away = distance(word, candidate);
    if (best.empty() || away < least) {
      best = candidate;
      least = away;
    }
  }
  return !best.empty() && least <= std::max<std::size_t>(2, word.size() / 3) && least < word.size() ? best
                                                                                                    : std::string();
}

Fault misuse(const CLI::App& program, const CLI::ParseError& error, const std::vector<std::string>& arguments) {
  if (arguments.empty()) return {"no verb is given", {}, 0, "begin with \"gallipot --help\""};
  const auto verbs = verbs_of(program);
  const std::string& first = arguments.front();
  if (std::find(verbs.begin(), verbs.end(), first) == verbs.end())
    return first.front() == '-' ? unknown_option(program, first) : unknown_verb(program, first);

  const CLI::App& verb = *program.get_subcommand(first);
  const std::string help = fmt::format("see \"gallipot {} --help\"", first);
  const auto kind = static_cast<CLI::ExitCodes>(error.get_exit_code());
  std::string what = error.what();
  if (kind == CLI::ExitCodes::ExtrasError) {
    // What is left over is an option that the verb does not know, or a word where it takes none.
    const auto options = options_of(verb);
    for (const std::string& argument : arguments) {
      const std::string name = argument.substr(0, argument.find('='));
      if (name.size() > 1 && name.front() == '-' && std::find(options.begin(), options.end(), name) == options.end() &&
          name != "-h")
        return unknown_option(verb, name);
    }
    const auto left = verb.remaining();
    return {fmt::format("\"{}\" takes no word like \"{}\"", first, left.empty() ? arguments.back() : left.front()),
            {},
            0,
            help};
  }
  // CLI11's own sentences, made to read as ours: no line ends, no full stop.
  std::replace(what.begin(), what.end(), '\n', ' ');
  while (!what.empty() && (what.back() == '.' || what.back() == ' ')) what.pop_back();
  if (kind == CLI::ExitCodes::RequiredError) {
    const auto end = what.find(" is required");
    if (end != std::string::npos) {
      std::string name = what.substr(0, end);
      if (name == "--index")
        return {fmt::format("\"{}\" does not know which index", first),
                {},
                0,
                "say --index and the index folder, or set GALLIPOT_INDEX"};
      if (name == "--catalogue")
        return {"\"index\" does not know which books", {}, 0, "say --catalogue and the shelf list, such as books.json"};
      if (name.front() != '-') return {fmt::format("\"{}\" is given no {}", first, name), {}, 0, help};
      return {fmt::format("\"{}\" needs {}", first, name), {}, 0, help};
    }
  }
  if (kind == CLI::ExitCodes::ConversionError || kind == CLI::ExitCodes::ArgumentMismatch ||
      kind == CLI::ExitCodes::ValidationError) {
    for (const CLI::Option* option : verb.get_options()) {
      const std::string name = option->get_name();
      if (name.empty() || what.find(name) == std::string::npos) continue;
      const std::string wants = option->get_type_name().empty() ? "nothing after it" : option->get_type_name();
      if (kind == CLI::ExitCodes::ConversionError && !option->results().empty())
        return {fmt::format("\"{}\" after {} is no {}", option->results().front(), name,
                            option->get_type_name() == "YEAR" ? "year" : "whole number"),
                {},
                0,
                fmt::format("write a number, as in \"{} {}\"", name, wants == "YEAR" ? "1850" : "20")};
      return {fmt::format("{} is not followed by what it needs ({})", name, wants), {}, 0, help};
    }
  }
  return {std::move(what), {}, 0, help};
}

}  // namespace gallipot::program
