// Two rounds of drawing and weighing.
#include "query/finding/weigh.h"

#include <algorithm>
#include <unordered_map>

namespace gallipot {
namespace {

struct Read {
  ComparableRecipe recipe;
  Sketch sketch;
};

/// Reads each candidate once, whatever number of rounds it is drawn in.
class Sketches {
 public:
  Sketches(const Shelf& shelf, const Lexicon& lexicon, const Ranking& ranking, Telling& telling)
      : shelf_(shelf), lexicon_(lexicon), ranking_(ranking), telling_(telling) {}

  const Read* of(Xapian::docid docid) {
    const auto [it, fresh] = read_.try_emplace(docid);
    if (fresh) {
      if (auto recipe = shelf_.unweighed(docid)) {
        it->second = std::make_unique<Read>();
        it->second->recipe = std::move(*recipe);
        it->second->sketch = sketch_of(it->second->recipe, lexicon_, ranking_, telling_);
      }
    }
    return it->second.get();
  }

 private:
  const Shelf& shelf_;
  const Lexicon& lexicon_;
  const Ranking& ranking_;
  Telling& telling_;
  std::unordered_map<Xapian::docid, std::unique_ptr<Read>> read_;
};

double score_of(const Alike& parts, double words, const Ranking& r) {
  const double all = r.name + r.stuff + r.method + r.words;
  return all > 0 ? (r.name * parts.name + r.stuff * parts.stuff + r.method * parts.method + r.words * words) / all : 0;
}

std::vector<Weighed> one_round(const std::vector<Candidate>& drawn, const Sketch& asked, Sketches& sketches,
                               const Ranking& ranking, Xapian::docid except) {
  std::vector<Weighed> out;
  out.reserve(drawn.size());
  for (const auto& candidate : drawn) {
    if (candidate.docid == except) continue;
    const Read* read = sketches.of(candidate.docid);
    if (!read) continue;
    Weighed w;
    w.docid = candidate.docid;
    w.words = candidate.words;
    w.alike = alike(asked, read->sketch, ranking);
    w.score = score_of(w.alike, w.words, ranking);
    out.push_back(std::move(w));
  }
  // Document ids depend on the threads that indexed; shelf ids do not.
  std::sort(out.begin(), out.end(), [&](const Weighed& a, const Weighed& b) {
    return a.score != b.score ? a.score > b.score : sketches.of(a.docid)->recipe.id < sketches.of(b.docid)->recipe.id;
  });
  return out;
}

}  // namespace

std::vector<Weighed> weigh(const Shelf& shelf, const Lexicon& lexicon, const Sketch& asked, const Weights& words,
                           const Filter& filter, const Ranking& ranking, Telling& telling, Xapian::docid except,
                           std::size_t most) {
  Sketches sketches(shelf, lexicon, ranking, telling);
  const auto draw_size = static_cast<std::size_t>(ranking.candidates);

  // The dish is learnt from the whole shelf; the filter limits only what is shown.
  Draw draw{asked, words, {}};
  auto first = one_round(candidates(shelf, draw, {}, ranking, telling, draw_size), asked, sketches, ranking, except);
  const auto speakers = std::min(first.size(), static_cast<std::size_t>(ranking.feedback_recipes));
  std::vector<const Sketch*> others;
  std::vector<Xapian::docid> best;
  for (std::size_t i = 0; i < speakers; ++i) {
    others.push_back(&sketches.of(first[i].docid)->sketch);
    best.push_back(first[i].docid);
  }
  if (except != 0) best.push_back(except);
  draw.sketch = mixed(asked, others, ranking.feedback_share);
  if (ranking.query_feedback > 0 && !best.empty()) draw.feedback = telling_terms(shelf, best, 40);
  auto out = one_round(candidates(shelf, draw, filter, ranking, telling, std::max(draw_size, most)), draw.sketch,
                       sketches, ranking, except);
  if (out.size() > most) out.resize(most);
  for (auto& w : out) w.recipe = sketches.of(w.docid)->recipe;
  return out;
}

}  // namespace gallipot
