// The places looked at: the words beside the mention, the head of its clause and sentence, what follows up to the next
// point, the verbs before and after it, the time and the stuff named with it.
#include "indexer/parsing/step_features.h"

#include <algorithm>
#include <array>

namespace gallipot::steps {
namespace {

struct Near {
  std::string_view key;   ///< "#" for a number
  std::string_view kind;  ///< class, or "num", "point", "word"
};

Near near_word(const Scene& s, std::int64_t at) {
  if (at < 0 || at >= static_cast<std::int64_t>(s.words->size())) return {"^", "edge"};
  const Word& w = (*s.words)[static_cast<std::size_t>(at)];
  if (w.kind == Word::Kind::number) return {"#", "num"};
  if (w.kind == Word::Kind::point) return {w.key, "point"};
  return {w.key, class_name(s.classes[static_cast<std::size_t>(at)])};
}

std::string_view bucket(std::uint32_t n) {
  static constexpr std::array<std::string_view, 7> names = {"0", "1", "2", "3-4", "5-8", "9-16", "17+"};
  return names[n <= 2 ? n : n <= 4 ? 3 : n <= 8 ? 4 : n <= 16 ? 5 : 6];
}

bool function_word(const Scene& s, std::uint32_t word) {
  return s.classes[word] != WordClass::other || (*s.words)[word].key.size() < 3;
}

// The stuff named next after the mention within its clause, and how far off.
struct Stuff {
  const Foodstuff* food = nullptr;
  std::uint32_t distance = 0;
};

Stuff next_stuff(const Scene& s, std::uint32_t from, std::uint32_t to) {
  const auto& words = s.words->all();
  for (std::uint32_t i = from; i < to && i < from + 7; ++i) {
    if (words[i].kind != Word::Kind::word || function_word(s, i)) continue;
    const auto m = s.lexicon->foodstuff_phrases().longest(words, i);
    if (m.words > 0) return {&s.lexicon->foodstuffs()[m.value], i - from};
  }
  return {};
}

// The place named next after the mention within its clause ("in JARS"), and the word before it that is no article.
struct Place {
  std::string_view sort, by;
};

Place next_place(const Scene& s, std::uint32_t from, std::uint32_t to) {
  for (std::uint32_t i = from; i < to && i < from + 12; ++i) {
    const std::string_view sort = s.verbs->place(s.key(i));
    if (sort.empty()) continue;
    for (std::uint32_t j = i; j-- > from;)
      if (s.classes[j] == WordClass::preposition) return {sort, s.key(j)};
    return {sort, "-"};
  }
  return {};
}

}  // namespace

void mention_features(const Scene& s, std::size_t mention, FeatureSink& sink) {
  const Mention& m = s.mentions[mention];
  const Clause& c = s.clauses[m.clause];
  const std::int64_t at = m.word;
  const std::string_view v = m.verb->base, f = form_name(m.form);
  const Word& word = (*s.words)[m.word];
  sink.take("bias");
  sink.take("f=", f);
  sink.take("v=", v);
  sink.take("vf=", v, "/", f);
  sink.take("w=", word.key);
  const std::string_view o =
      operation_name(m.verb->operations[0]);  // stands for the verb where the verb itself is rare
  sink.take("o=", o, "/", f);

  const Near p1 = near_word(s, at - 1), p2 = near_word(s, at - 2), p3 = near_word(s, at - 3);
  const Near n1 = near_word(s, at + 1), n2 = near_word(s, at + 2), n3 = near_word(s, at + 3);
  sink.take("p1=", p1.key);
  sink.take("p2=", p2.key);
  sink.take("p12=", p2.key, "_", p1.key);
  sink.take("fp1=", f, "/", p1.key);
  sink.take("fpk=", f, "/", p1.kind);
  sink.take("fpk2=", f, "/", p2.kind, "_", p1.kind);
  sink.take("fpk3=", f, "/", p3.kind, "_", p2.kind, "_", p1.kind);
  sink.take("vp1=", v, "/", p1.key);
  sink.take("vp12=", v, "/", p2.key, "_", p1.key);
  sink.take("n1=", n1.key);
  sink.take("fn1=", f, "/", n1.key);
  sink.take("fnk=", f, "/", n1.kind);
  sink.take("fnk2=", f, "/", n1.kind, "_", n2.kind);
  sink.take("vn1=", v, "/", n1.key);
  sink.take("vfpk=", v, "/", f, "/", p1.kind);
  sink.take("vfnk=", v, "/", f, "/", n1.kind);
  sink.take("on1=", o, "/", n1.key);
  sink.take("op1=", o, "/", p1.key);
  sink.take("ofpk=", o, "/", f, "/", p1.kind);
  sink.take("ofnk=", o, "/", f, "/", n1.kind);
  sink.take("vn2=", v, "/", n2.key);
  sink.take("vn12=", v, "/", n1.key, "_", n2.key);
  sink.take("vn3=", v, "/", n3.key);
  sink.take("fpn=", f, "/", p1.kind, "/", n1.kind);
  if (word.glued || (m.word + 1 < s.words->size() && (*s.words)[m.word + 1].glued && n1.key == "-"))
    sink.take("glued=", f);

  const std::uint32_t offset = m.word - c.first;
  const Near head = near_word(s, c.first), sentence_head = near_word(s, c.sentence_first);
  sink.take("ch=", head.key);
  sink.take("chk=", f, "/", head.kind, "/", bucket(offset));
  sink.take("sh=", sentence_head.key);
  sink.take("shk=", f, "/", sentence_head.kind);
  sink.take("off=", f, "/", bucket(offset), "/", bucket(m.in_clause));
  sink.take("soff=", f, "/", bucket(m.word - c.sentence_first));
  if (word.capital && c.sentence_first != m.word) sink.take("cap=", f);
  if (c.first > 0 && offset == 0) sink.take("after=", f, "/", s.key(static_cast<std::int64_t>(c.first) - 1));
  const std::string_view by(&c.ended_by, 1);
  sink.take("end=", f, "/", by, "/", bucket(c.last - m.word - 1));
  sink.take("vend=", v, "/", by, "/", bucket(c.last - m.word - 1));

  // what follows and goes before within the clause
  const std::uint32_t bag_end = std::min<std::uint32_t>(c.last, m.word + 9);
  for (std::uint32_t i = m.word + 1; i < bag_end; ++i) {
    if (function_word(s, i)) continue;
    const std::string_view k = near_word(s, i).key;
    sink.take("b=", k);
    sink.take("vb=", v, "/", k);
  }
  for (std::uint32_t i = m.word > c.first + 5 ? m.word - 5 : c.first; i < m.word; ++i) {
    const std::string_view k = near_word(s, i).key;
    sink.take("a=", k);
    if (!function_word(s, i)) sink.take("va=", v, "/", k);
  }

  // verbs beside it
  if (mention > 0) {
    const Mention& q = s.mentions[mention - 1];
    const std::uint32_t gap = m.word - q.word;
    sink.take("pv=", f, "/", form_name(q.form), "/", bucket(gap));
    if (gap <= 3) sink.take("pvv=", q.verb->base, "_", v);
    if (q.clause == m.clause) sink.take("pvc=", q.verb->base, "/", v);
  }
  if (mention + 1 < s.mentions.size()) {
    const Mention& q = s.mentions[mention + 1];
    const std::uint32_t gap = q.word - m.word;
    sink.take("nv=", f, "/", form_name(q.form), "/", bucket(gap));
    if (gap <= 3) sink.take("nvv=", v, "_", q.verb->base);
  }
  for (std::size_t back = 1; back <= mention && back <= 40; ++back) {
    const Mention& q = s.mentions[mention - back];
    if (q.verb != m.verb) continue;
    sink.take("rep=", f, "/", form_name(q.form), "/", bucket(m.word - q.word));
    sink.take("vrep=", v, "/", form_name(q.form));
    break;
  }

  // the time and the stuff named with it
  const auto next_time = std::lower_bound(s.durations.begin(), s.durations.end(), m.word,
                                          [](const Duration& d, std::uint32_t w) { return d.last <= w; });
  bool timed = false;
  if (next_time != s.durations.end() && next_time->first < c.last) {
    timed = true;
    sink.take("time=", f);
    sink.take("vtime=", v);
    if (next_time->first - m.word <= 2) sink.take("vtime1=", v);
    if (next_time->minutes.low >= 720) sink.take("vdays=", v);
  }
  if (!timed) sink.take("notime=", f);
  // a time told before any other verb is told, though points stand between: "let it hang in a cool, dry place three
  // days"
  const std::uint32_t other =
      mention + 1 < s.mentions.size() ? s.mentions[mention + 1].word : static_cast<std::uint32_t>(s.words->size());
  if (!timed && next_time != s.durations.end() && next_time->first < other &&
      s.clauses[s.clause_of(next_time->first)].sentence == c.sentence) {
    sink.take("later=", f);
    sink.take("vlater=", v);
  }
  if (const Place place = next_place(s, m.word + 1, c.last); !place.sort.empty()) {
    sink.take("place=", place.sort);
    sink.take("vplace=", v, "/", place.sort);
    sink.take("vinplace=", v, "/", place.by, "/", place.sort);
  }
  const Stuff stuff = next_stuff(s, m.word + 1, c.last);
  if (stuff.food) {
    sink.take("food=", f, "/", stuff.food->kind);
    sink.take("vfood=", v, "/", stuff.food->kind);
    if (stuff.distance <= 1) sink.take("vfood1=", v, "/", stuff.food->kind);
  } else {
    sink.take("vfood=", v, "/-");
  }

  // what the prepositions of its clause lead to: "lay in WATER", "rub through a SIEVE", "put over the FIRE"
  for (std::uint32_t i = m.word + 1, told = 0; i + 1 < c.last && i < m.word + 10 && told < 2; ++i) {
    if (s.classes[i] != WordClass::preposition) continue;
    std::uint32_t to = i + 1;
    while (to + 1 < c.last && to < i + 4 && function_word(s, to)) ++to;
    const auto food = s.lexicon->foodstuff_phrases().longest(s.words->all(), to);
    const std::string_view place = s.verbs->place(s.key(to));
    const std::string_view what = !place.empty() ? place
                                  : food.words   ? std::string_view{s.lexicon->foodstuffs()[food.value].kind}
                                                 : s.key(to);
    sink.take("vto=", v, "/", s.key(i), "/", what);
    sink.take("to=", s.key(i), "/", what);
    ++told;
  }

  const std::uint32_t quarter = c.sentence * 4 / std::max<std::uint32_t>(1, s.sentences);
  sink.take("q=", f, "/", std::array<std::string_view, 5>{"0", "1", "2", "3", "4"}[quarter]);
  if (c.sentence == 0) sink.take("q0=", f);
  sink.take("left=", f, "/", bucket(s.sentences - c.sentence - 1));
  // a long receipt is told more coarsely than a short one
  sink.take("len=", f, "/", bucket(static_cast<std::uint32_t>(s.mentions.size() / 4)));
  sink.take("olen=", o, "/", bucket(static_cast<std::uint32_t>(s.mentions.size() / 4)));
  if (near_word(s, c.sentence_first).kind == "num") sink.take("sn=", f);
}

void history_features(const Scene& s, std::size_t mention, const StepsSoFar& so_far, FeatureSink& sink) {
  const Mention& m = s.mentions[mention];
  const std::string_view v = m.verb->base, f = form_name(m.form);
  if (so_far.last_operation < 0) {
    sink.take("h=none/", f);
    return;
  }
  const std::string_view last = operation_name(static_cast<std::size_t>(so_far.last_operation));
  const std::string_view far = bucket(m.word - so_far.last_word);
  sink.take("h=", last);
  sink.take("hv=", last, "/", v);
  sink.take("hf=", last, "/", f, "/", far);
  sink.take("hd=", f, "/", far);
  if (so_far.last_clause == m.clause) sink.take("hc=", v, "/", f);
  if (so_far.last_but_one >= 0)
    sink.take("hh=", operation_name(static_cast<std::size_t>(so_far.last_but_one)), "_", last);
}

void duration_features(const Scene& s, std::size_t duration, FeatureSink& sink) {
  const Duration& d = s.durations[duration];
  const std::uint32_t clause = s.clause_of(d.first);
  const Clause& c = s.clauses[clause];
  const std::int64_t first = d.first, last = d.last;
  const Near p1 = near_word(s, first - 1), p2 = near_word(s, first - 2), n1 = near_word(s, last),
             n2 = near_word(s, last + 1);
  sink.take("t:bias");
  sink.take("t:p1=", p1.key);
  sink.take("t:p2=", p2.key);
  sink.take("t:p12=", p2.key, "_", p1.key);
  sink.take("t:n1=", n1.key);
  sink.take("t:n2=", n2.key);
  sink.take("t:n12=", n1.key, "_", n2.key);
  sink.take("t:ch=", near_word(s, c.first).key);
  sink.take("t:sh=", near_word(s, c.sentence_first).key);
  sink.take("t:unit=", s.key(last - 1));
  sink.take(d.minutes.high >= 1440 ? "t:days" : d.minutes.high >= 60 ? "t:hours" : "t:minutes");
  for (std::uint32_t i = d.first > c.first + 6 ? d.first - 6 : c.first; i < d.first; ++i)
    sink.take("t:a=", near_word(s, i).key);
  for (std::uint32_t i = d.last; i < c.last && i < d.last + 6; ++i) sink.take("t:b=", near_word(s, i).key);
  if (clause > 0 && near_word(s, c.sentence_first).key == "time") sink.take("t:label");
  bool before = false;
  for (std::size_t e = 0; e < duration; ++e)
    before = before || (s.durations[e].minutes.low <= d.minutes.high && d.minutes.low <= s.durations[e].minutes.high);
  sink.take(before ? "t:told" : "t:new");
  if (duration == 0) sink.take("t:first");
  // the verb before it
  for (std::size_t i = s.mentions.size(); i-- > 0;) {
    const Mention& m = s.mentions[i];
    if (m.word >= d.first || s.clauses[m.clause].sentence < c.sentence) continue;
    if (s.clauses[m.clause].sentence == c.sentence) {
      sink.take("t:v=", m.verb->base);
      sink.take("t:f=", form_name(m.form), "/", bucket(d.first - m.word));
      sink.take("t:vc=", m.clause == clause ? "same" : "other");
    }
    break;
  }
}

}  // namespace gallipot::steps
