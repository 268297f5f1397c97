// The model's own small questions.
#include "query/dossier/dossier.h"

#include <algorithm>
#include <array>

namespace gallipot {
namespace {

constexpr std::array<const char*, 3> standings = {"chosen", "kept", "struck"};

}  // namespace

const DossierRecipe* Dossier::recipe(std::string_view id) const {
  const auto at = std::find_if(recipes.begin(), recipes.end(), [&](const DossierRecipe& r) { return r.id == id; });
  return at == recipes.end() ? nullptr : &*at;
}

DossierRecipe* Dossier::recipe(std::string_view id) {
  const auto at = std::find_if(recipes.begin(), recipes.end(), [&](const DossierRecipe& r) { return r.id == id; });
  return at == recipes.end() ? nullptr : &*at;
}

std::vector<std::string> Dossier::standing_ids() const {
  std::vector<std::string> out;
  for (const DossierRecipe& one : recipes)
    if (one.standing != DossierRecipe::Standing::struck) out.push_back(one.id);
  return out;
}

const char* standing_name(DossierRecipe::Standing standing) { return standings[static_cast<std::size_t>(standing)]; }

std::optional<DossierRecipe::Standing> standing_named(std::string_view name) {
  for (std::size_t i = 0; i < standings.size(); ++i)
    if (name == standings[i]) return static_cast<DossierRecipe::Standing>(i);
  return std::nullopt;
}

}  // namespace gallipot
