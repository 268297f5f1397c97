#include "tests/sample/pipeline.h"

#include <cstdlib>
#include <filesystem>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"

namespace gallipot::sample {

std::shared_ptr<const Lexicon> Pipeline::lexicon_;
std::unique_ptr<Answer> Pipeline::answer_;
std::unique_ptr<Shelf> Pipeline::shelf_;
std::string Pipeline::scratch_;

void Pipeline::SetUpTestSuite() {
  const std::vector<Book> books = must(read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json"));
  lexicon_ = must(Lexicon::load());
  const auto measures = must(Register::load());
  std::vector<ComparableRecipe> all;
  for (std::uint32_t order = 0; order < books.size(); ++order)
    for (ComparableRecipe& recipe : must(read_recipes(books[order], order, *lexicon_, *measures)))
      all.push_back(std::move(recipe));
  answer_ = std::make_unique<Answer>(std::move(all));
  scratch_ = (std::filesystem::temp_directory_path() / "gallipot-sample-XXXXXX").string();
  if (!mkdtemp(scratch_.data())) throw std::runtime_error("no scratch folder can be made under " + scratch_);
  must(build_index(books, scratch_ + "/index", *lexicon_));
  shelf_ = std::make_unique<Shelf>(must(Shelf::open(scratch_ + "/index")));
}

void Pipeline::TearDownTestSuite() {
  shelf_.reset();
  answer_.reset();
  lexicon_.reset();
  std::filesystem::remove_all(scratch_);
}

}  // namespace gallipot::sample
