// Puts the questions.
#include "query/cooking/gaps.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "indexer/text/unicode.h"
#include "indexer/text/words.h"
#include "query/comparing/statistics.h"
#include "query/cooking/operations.h"
#include "query/cooking/printed.h"

namespace gallipot {
namespace {

constexpr double like_enough = 0.5;  // likeness of two operations of which one may stand for the other
constexpr double most_have_it = 0.75;

bool one_of(const std::vector<std::string>& ops, const std::string& op) {
  return std::find(ops.begin(), ops.end(), op) != ops.end();
}

/// The questions of the table, each with the places of its answers.
struct Asked {
  const Question* question = nullptr;
  std::vector<std::size_t> answers;
};

std::vector<Asked> asked_of(const Kitchen& kitchen) {
  std::vector<Asked> out;
  for (std::size_t q = 0; q < kitchen.questions.size(); ++q) {
    const Question& question = kitchen.questions[q];
    auto at =
        std::find_if(out.begin(), out.end(), [&](const Asked& a) { return a.question->question == question.question; });
    if (at == out.end()) at = out.insert(out.end(), Asked{&question, {}});
    at->answers.push_back(q);
  }
  return out;
}

/// Where a text answers: places of answers in the table, with the span of the words.
struct Said {
  std::size_t answer;
  Span span;
};

std::vector<Said> said_in(std::string_view text, const Kitchen& kitchen) {
  std::vector<Said> out;
  const Words words(text);
  for (std::size_t i = 0; i < words.size();) {
    const auto match = kitchen.answer_phrases.longest(words.all(), i);
    if (match.words == 0) {
      ++i;
      continue;
    }
    out.push_back({match.value, {words[i].span.begin, words[i + match.words - 1].span.end}});
    i += match.words;
  }
  return out;
}

const Step* first_step(const ComparableRecipe& recipe, const std::vector<std::string>& ops) {
  for (const Step& step : recipe.steps)
    if (one_of(ops, step.op)) return &step;
  return nullptr;
}

/// Whether words at `span` speak of one of the operations: they stand in a sentence with it.
bool speaks_of(const ComparableRecipe& recipe, Span span, const std::vector<std::string>& ops) {
  if (ops.empty()) return true;
  return std::any_of(recipe.steps.begin(), recipe.steps.end(), [&](const Step& step) {
    return one_of(ops, step.op) && sentence_round(recipe.recipe.text, step.span).overlaps(span);
  });
}

bool ends_with_word(const std::string& name, const std::string& word) {
  return name.size() > word.size() && name.ends_with(word) && name[name.size() - word.size() - 1] == ' ';
}

/// "meal" and "corn meal", "pork" and "salt pork" are no gap.
bool same_stuff(const std::string& a, const std::string& b) {
  return a == b || ends_with_word(a, b) || ends_with_word(b, a) || a.starts_with(b + " ") || b.starts_with(a + " ");
}

class Asker {
 public:
  Asker(const ComparableRecipe& recipe, const std::vector<ComparableRecipe>& siblings, const Kitchen& kitchen,
        const Yardstick& yardstick)
      : recipe_(recipe), siblings_(siblings), kitchen_(kitchen), yardstick_(yardstick) {
    own_ = said_in(recipe.recipe.text, kitchen);
    for (const ComparableRecipe& sibling : siblings) theirs_.push_back(said_in(sibling.recipe.text, kitchen));
  }

  Gaps ask() {
    if (siblings_.size() < fewest_speakers) return {};
    for (const Asked& asked : asked_of(kitchen_)) {
      if (asked.question->kind == Gap::Kind::step)
        ask_step(*asked.question);
      else if (asked.question->kind == Gap::Kind::time)
        ask_time(*asked.question);
      else
        ask_words(asked);
    }
    ask_stuff();
    return std::move(out_);
  }

 private:
  bool enough(std::size_t spoke) const { return spoke >= fewest_speakers && 2 * spoke >= siblings_.size(); }

  Gap gap_of(const Question& question, const std::string& op, const Step* step) const {
    Gap gap;
    gap.kind = question.kind;
    gap.about = op;
    gap.question = question.question;
    const auto at = gap.question.find("{op}");
    if (at != std::string::npos) gap.question.replace(at, 4, done(op));
    if (step != nullptr) gap.print = printed_at(recipe_, step->span);
    gap.asked = siblings_.size();
    return gap;
  }

  void ask_words(const Asked& asked) {
    const Question& question = *asked.question;
    const Step* step = first_step(recipe_, question.ops);
    if (step == nullptr && !question.ops.empty()) return;
    const auto answers_it = [&](const Said& said) {
      return std::find(asked.answers.begin(), asked.answers.end(), said.answer) != asked.answers.end();
    };
    if (std::any_of(own_.begin(), own_.end(), answers_it)) return;
    Gap gap = gap_of(question, step == nullptr ? std::string() : step->op, step);
    std::map<std::string, Answer> answers;
    for (std::size_t s = 0; s < siblings_.size(); ++s) {
      std::set<std::string> of_this;
      for (const Said& said : theirs_[s]) {
        if (!answers_it(said) || !speaks_of(siblings_[s], said.span, question.ops)) continue;
        const std::string& words = kitchen_.questions[said.answer].answer;
        if (!of_this.insert(words).second) continue;
        Answer& answer = answers[words];
        answer.words = words;
        answer.by.push_back({s, std::string(said.span.in(siblings_[s].recipe.text))});
      }
      gap.spoke += of_this.empty() ? 0 : 1;
    }
    if (!enough(gap.spoke)) return;
    for (auto& [words, answer] : answers) gap.answers.push_back(std::move(answer));
    keep(std::move(gap));
  }

  /// One answer where the speakers agree; else all that more than one of them gives.
  void keep(Gap gap) {
    std::stable_sort(gap.answers.begin(), gap.answers.end(),
                     [](const Answer& a, const Answer& b) { return a.by.size() > b.by.size(); });
    const auto share = static_cast<double>(gap.answers.front().by.size()) / static_cast<double>(gap.spoke);
    const bool split = gap.answers.size() > 1 && 2 * gap.answers[1].by.size() > gap.answers.front().by.size();
    if (share >= agreement && !split)
      gap.answers.resize(1);
    else if (gap.answers.size() == 1)
      return;
    out_.gaps.push_back(std::move(gap));
  }

  bool has_like(const ComparableRecipe& recipe, const std::string& op) const {
    return std::any_of(recipe.steps.begin(), recipe.steps.end(),
                       [&](const Step& step) { return yardstick_.likeness(op, step.op) >= like_enough; });
  }

  void ask_step(const Question& question) {
    const std::string& op = question.ops.front();
    if (has_like(recipe_, op)) return;
    Answer answer;
    answer.words = question.answer;
    for (std::size_t s = 0; s < siblings_.size(); ++s) {
      const Step* step = first_step(siblings_[s], question.ops);
      if (step != nullptr) answer.by.push_back({s, std::string(step->span.in(siblings_[s].recipe.text))});
    }
    if (answer.by.size() < fewest_speakers ||
        static_cast<double>(answer.by.size()) < most_have_it * static_cast<double>(siblings_.size()))
      return;
    Gap gap = gap_of(question, op, nullptr);
    gap.spoke = answer.by.size();
    gap.answers.push_back(std::move(answer));
    out_.gaps.push_back(std::move(gap));
  }

  /// The longest time that a recipe gives for an operation, or one that may stand for it.
  std::optional<std::pair<Range, Span>> longest(const ComparableRecipe& recipe, const std::string& op) const {
    std::optional<std::pair<Range, Span>> out;
    for (const Step& step : recipe.steps)
      if (step.minutes && step.minutes->high > 0 && yardstick_.likeness(op, step.op) >= like_enough &&
          (!out || step.minutes->high > out->first.high))
        out = {*step.minutes, step.span};
    return out;
  }

  void ask_time(const Question& question) {
    for (const std::string& op : question.ops) {
      std::optional<std::size_t> at;
      for (std::size_t s = 0; s < recipe_.steps.size(); ++s)
        if (recipe_.steps[s].op == op) at = s;
      if (!at || longest(recipe_, op)) continue;
      Gap gap = gap_of(question, op, &recipe_.steps[*at]);
      std::vector<std::pair<double, Witnessed>> times;
      for (std::size_t s = 0; s < siblings_.size(); ++s)
        if (const auto theirs = longest(siblings_[s], op))
          times.push_back({(theirs->first.low + theirs->first.high) / 2,
                           {s, std::string(theirs->second.in(siblings_[s].recipe.text))}});
      gap.spoke = times.size();
      if (!enough(gap.spoke)) continue;
      std::sort(times.begin(), times.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
      add_times(gap, times, *at);
      out_.gaps.push_back(std::move(gap));
      return;  // one time for the heat is enough: the next operation of the row is its like
    }
  }

  void add_times(Gap& gap, const std::vector<std::pair<double, Witnessed>>& times, std::size_t step) {
    std::vector<double> minutes;
    for (const auto& [time, who] : times) minutes.push_back(time);
    const Quartiles q = quartiles(minutes);
    const bool few = minutes.size() < 4;
    const Range range{few ? minutes.front() : q.lower, few ? minutes.back() : q.upper};
    const auto answer = [&](std::size_t first, std::size_t last, Range told) {
      Answer out;
      out.minutes = told;
      for (std::size_t i = first; i < last; ++i) out.by.push_back(times[i].second);
      gap.answers.push_back(std::move(out));
    };
    if (range.low > 0 && range.high / range.low <= same_time) {
      answer(0, times.size(), range);
      out_.times.push_back({step, range});
      return;
    }
    // The widest step between two neighbours, as a ratio, parts the quick from the slow.
    std::size_t part = 1;
    for (std::size_t i = 1; i < minutes.size(); ++i)
      if (minutes[i] / std::max(minutes[i - 1], 1.0) > minutes[part] / std::max(minutes[part - 1], 1.0)) part = i;
    answer(0, part, {minutes.front(), minutes[part - 1]});
    answer(part, minutes.size(), {minutes[part], minutes.back()});
  }

  void ask_stuff() {
    std::map<std::string, std::vector<Witnessed>> have;
    for (std::size_t s = 0; s < siblings_.size(); ++s) {
      std::set<std::string> seen;
      for (const ComparableIngredient& i : siblings_[s].ingredients) {
        const std::string& name = yardstick_.stuff(i.printed.name);
        if (i.printed.optional || i.kind.empty() || i.kind == "household" || !seen.insert(name).second) continue;
        have[name].push_back({s, std::string(i.printed.span.in(siblings_[s].recipe.text))});
      }
    }
    for (const ComparableIngredient& i : recipe_.ingredients)
      std::erase_if(have, [&](const auto& one) { return same_stuff(one.first, yardstick_.stuff(i.printed.name)); });
    // A word that the print has, whether or not it was read as an ingredient, is no gap.
    const std::string words = fold_case(recipe_.recipe.title + " " + recipe_.recipe.text);
    std::erase_if(have, [&](const auto& one) { return words.find(one.first) != std::string::npos; });
    for (auto& [name, by] : have) {
      if (by.size() < fewest_speakers ||
          static_cast<double>(by.size()) < most_have_it * static_cast<double>(siblings_.size()))
        continue;
      Gap gap;
      gap.kind = Gap::Kind::stuff;
      gap.about = name;
      gap.question = "Does it have " + name + "?";
      gap.asked = siblings_.size();
      gap.spoke = by.size();
      gap.answers.push_back({name, std::nullopt, std::move(by)});
      out_.gaps.push_back(std::move(gap));
    }
  }

  const ComparableRecipe& recipe_;
  const std::vector<ComparableRecipe>& siblings_;
  const Kitchen& kitchen_;
  const Yardstick& yardstick_;
  std::vector<Said> own_;
  std::vector<std::vector<Said>> theirs_;
  Gaps out_;
};

}  // namespace

Gaps gaps_of(const ComparableRecipe& recipe, const std::vector<ComparableRecipe>& siblings, const Kitchen& kitchen,
             const Yardstick& yardstick) {
  return Asker(recipe, siblings, kitchen, yardstick).ask();
}

}  // namespace gallipot
