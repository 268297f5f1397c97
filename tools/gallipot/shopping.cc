// gallipot shopping: what to buy for one recipe or several.
#include "query/cooking/shopping.h"

#include <fmt/format.h>

#include <charconv>

#include "query/cooking/cook.h"
#include "query/reporting/kitchen.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::vector<std::string> recipes;
  bool html = false;
};

struct Scaled {
  std::string id;
  double scale = 1;
};

/// "oldacre-1838/0019" or "oldacre-1838/0019@0.5".
Outcome<Scaled> read_scaled(const std::string& text) {
  const auto at = text.rfind('@');
  if (at == std::string::npos) return Scaled{text, 1};
  Scaled out{text.substr(0, at), 0};
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data() + at + 1, end, out.scale);
  if (read.ec != std::errc{} || read.ptr != end)
    return fault("\"" + text.substr(at + 1) + "\" after the @ is not a number",
                 "write the recipe and how many times it is made, like oldacre-1838/0019@0.5");
  const auto checked = checked_scale(out.scale);
  if (!checked) return fault(checked.error().what, "write a number over 0 after the @, like " + out.id + "@0.5");
  return out;
}

Outcome<Exit> list_shopping(const Asked& asked) {
  if (asked.json && asked.html) return fault("an answer has one form only", "say --json or --html");
  std::vector<Scaled> recipes;
  for (const std::string& text : asked.recipes) {
    auto one = read_scaled(text);
    if (!one) return tl::unexpected(one.error());
    for (const Scaled& other : recipes)
      if (other.id == one->id)
        return fault("the recipe " + one->id + " is named twice", "name it once, with @ and how many times it is made");
    recipes.push_back(std::move(*one));
  }
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto yardstick = Yardstick::load(opened->shelf.measures(), asked.tables);
  if (!yardstick) return tl::unexpected(yardstick.error());
  const auto kitchen = Kitchen::load(asked.tables);
  if (!kitchen) return tl::unexpected(kitchen.error());
  std::vector<Sheet> sheets;
  for (const Scaled& recipe : recipes) {
    Wanted wanted;
    if (recipe.scale != 1) wanted.scale = recipe.scale;
    auto sheet = cook(opened->shelf, *opened->lexicon, *yardstick, **kitchen, recipe.id, wanted);
    if (!sheet) return tl::unexpected(sheet.error());
    sheets.push_back(std::move(*sheet));
  }
  const ShoppingList list = shopping_for(sheets, **kitchen, *yardstick);
  if (asked.json)
    say(shopping_as_json(list));
  else if (asked.html)
    say(shopping_as_html(list));
  else
    say(shopping_as_text(list, text_style()));
  return Exit::answered;
}

}  // namespace

void add_shopping(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("shopping", "List what to buy for one recipe or several");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("recipes", asked->recipes, "The recipes, each by its id; ID@N for N times the printed amounts")
      ->type_name("ID[@N]")
      ->required();
  add_index_option(*verb, *asked);
  verb->add_flag("--html", asked->html, "Answer as a page to print");
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer("Example:\n  gallipot shopping --index shelf oldacre-1838/0019 pellowe-1884/0010@0.5");
  verb->callback([&work, asked] { work = [asked] { return list_shopping(*asked); }; });
}

}  // namespace gallipot::program
