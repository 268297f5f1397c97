// Where do dossiers lie? One file each, NAME.dossier.json, in a folder of the cook's, its earlier versions beside it.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "query/dossier/dossier.h"

namespace gallipot {

/// Whether a name may be that of a dossier: 1 to 64 small letters, digits, '-' and '_', beginning with a letter or
/// digit. So no name leads out of the folder.
bool is_dossier_name(std::string_view name);

/// A name made of a title: "Damson Catsup, 1838" -> "damson-catsup-1838"; "dossier" where nothing is left.
std::string dossier_name_of(std::string_view title);

std::string dossier_path(const std::string& folder, std::string_view name);

/// Reads a dossier. Faults: the name, no such dossier (those that there are in `mend`), what read_dossier_json faults.
Outcome<Dossier> open_dossier(const std::string& folder, const std::string& name);

/// A new dossier. Makes the folder if it is not there. Faults: the name, one of that name is there.
Outcome<Dossier> begin_dossier(const std::string& folder, const std::string& name, const std::string& title,
                               const std::string& question);

/// Opens, changes and writes a dossier while no one else can: `change` alters it, or faults and nothing is written.
/// The version before is kept beside it as NAME.dossier.json.REVISION (the last hundred of them). The new one is
/// written beside the old, brought to disk and renamed. Faults: as open_dossier; another has held it for two seconds;
/// the disk.
Outcome<Dossier> change_dossier(const std::string& folder, const std::string& name,
                                const std::function<Outcome<bool>(Dossier&)>& change);

/// An earlier version, by its revision. Faults: no such.
Outcome<Dossier> earlier_dossier(const std::string& folder, const std::string& name, unsigned revision);
/// Revisions of the earlier versions that are kept, latest first.
std::vector<unsigned> earlier_revisions(const std::string& folder, const std::string& name);

struct ListedDossier {
  std::string name, title, question, changed;
  std::size_t recipes = 0, trials = 0;
  std::string fault;  ///< why it cannot be opened, as a sentence; empty when it can
};
/// The dossiers of a folder, last changed first. No folder is no dossiers.
std::vector<ListedDossier> list_dossiers(const std::string& folder);

/// "2026-03-04" and "2026-03-04T17:20:00Z" of now, in UTC.
std::string today();
std::string now_utc();

}  // namespace gallipot
