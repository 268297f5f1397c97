// How fast is a shelf indexed, beside bare Xapian on the same text in the same run?
//
// Bare Xapian: one thread, Xapian::TermGenerator with the English stemmer and positions, a document a paragraph, no
// data, one commit. It is given the paragraphs as the reader made them, for nothing, so that HTML costs it nothing.
// Every measurement runs in a process of its own: its processor time and its peak of memory are that process's alone.
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <xapian.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <numeric>
#include <string>
#include <vector>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/normalizing/normalize.h"
#include "indexer/parsing/parse.h"
#include "indexer/reading/read.h"
#include "indexer/segmenting/segment.h"
#include "indexer/storing/build.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/documents.h"
#include "indexer/storing/shards.h"

namespace {

namespace fs = std::filesystem;
using namespace gallipot;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) { return std::chrono::duration<double>(Clock::now() - start).count(); }

struct Measured {
  double seconds = 0;    ///< wall
  double processor = 0;  ///< user and system, of all threads
  double peak_mb = 0;    ///< resident, at its largest
  std::size_t recipes = 0;
};

/// What a measured process sends home.
struct Sent {
  double seconds = 0;
  std::size_t recipes = 0;
};

/// Runs `work` in a process of its own; it answers how many recipes it made.
Measured measure(const std::function<std::size_t()>& work) {
  int ends[2];
  if (::pipe(ends) != 0) throw std::runtime_error("no pipe to be had");
  std::fflush(nullptr);
  const pid_t child = ::fork();
  if (child < 0) throw std::runtime_error("no process to be had");
  if (child == 0) {
    int code = 0;
    try {
      const auto start = Clock::now();
      Sent sent;
      sent.recipes = work();
      sent.seconds = seconds_since(start);
      if (::write(ends[1], &sent, sizeof sent) != sizeof sent) code = 1;
    } catch (const std::exception& error) {
      fmt::print(stderr, "{}\n", error.what());
      code = 1;
    } catch (const Xapian::Error& error) {
      fmt::print(stderr, "{}\n", error.get_msg());
      code = 1;
    }
    std::_Exit(code);
  }
  ::close(ends[1]);
  Sent sent;
  const bool heard = ::read(ends[0], &sent, sizeof sent) == sizeof sent;
  ::close(ends[0]);
  int status = 0;
  rusage use{};
  ::wait4(child, &status, 0, &use);
  if (!heard || status != 0) throw std::runtime_error("a measurement failed");
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) * 1e-6;
  };
  return {sent.seconds, seconds(use.ru_utime) + seconds(use.ru_stime), static_cast<double>(use.ru_maxrss) / 1024,
          sent.recipes};
}

/// The run of middling wall time out of `times`.
Measured middling(std::size_t times, const std::function<std::size_t()>& work) {
  std::vector<Measured> all;
  for (std::size_t i = 0; i < times; ++i) all.push_back(measure(work));
  std::sort(all.begin(), all.end(), [](const Measured& a, const Measured& b) { return a.seconds < b.seconds; });
  return all[all.size() / 2];
}

template <typename T>
T must(Outcome<T> outcome) {
  if (!outcome) throw std::runtime_error(outcome.error().sentence());
  return std::move(*outcome);
}

struct Bench {
  std::vector<Book> books;
  std::shared_ptr<const Lexicon> lexicon;
  std::shared_ptr<const Register> measures;
  unsigned threads = 0;
  std::size_t times = 1;
  std::string folder;  ///< for indexes, emptied before each run

  double megabytes(const std::vector<Book>& some) const {
    return std::accumulate(some.begin(), some.end(), 0.0, [](double n, const Book& b) {
      return n + static_cast<double>(fs::file_size(b.path)) / 1e6;
    });
  }
  std::string fresh(const std::string& name) const {
    std::string path = folder + "/" + name;
    fs::remove_all(path);
    return path;
  }
  std::size_t pipeline(const std::vector<Book>& some, unsigned with_threads) const {
    BuildOptions options;
    options.threads = with_threads;
    return must(build_index(some, fresh("index"), *lexicon, options)).recipes;
  }
};

std::vector<std::string> paragraphs(const std::vector<Book>& books) {
  std::vector<std::string> out;
  for (const auto& book : books)
    for (auto& block : must(read_book_file(book.path)).blocks)
      if (!block.text.empty()) out.push_back(std::move(block.text));
  return out;
}

void bare_xapian(const std::vector<std::string>& texts, const std::string& path, bool positions) {
  Xapian::WritableDatabase database(path, Xapian::DB_CREATE_OR_OVERWRITE | Xapian::DB_BACKEND_GLASS);
  Xapian::TermGenerator terms;
  terms.set_stemmer(Xapian::Stem("en"));
  for (const auto& text : texts) {
    Xapian::Document document;
    terms.set_document(document);
    if (positions) {
      terms.index_text(text);
    } else {
      terms.index_text_without_positions(text);
    }
    database.add_document(document);
  }
  database.commit();
}

void row(const std::string& name, const Measured& m, double mb, double against) {
  const std::string ratio = against > 0 ? fmt::format("{:.2f}", m.seconds / against) : std::string();
  fmt::print("{:<34}{:>9.2f}{:>10.2f}{:>9.2f}{:>9.0f}{:>9}\n", name, m.seconds, m.processor, mb / m.seconds, m.peak_mb,
             ratio);
}

void beside_bare(const Bench& bench) {
  const double mb = bench.megabytes(bench.books);
  const auto texts = paragraphs(bench.books);
  const double text_mb = std::accumulate(texts.begin(), texts.end(), 0.0, [](double n, const std::string& t) {
    return n + static_cast<double>(t.size()) / 1e6;
  });
  fmt::print("{} books, {:.1f} MB as they lie on disk, {:.1f} MB of text in {} paragraphs\n\n", bench.books.size(), mb,
             text_mb, texts.size());
  fmt::print("{:<34}{:>9}{:>10}{:>9}{:>9}{:>9}\n", "", "seconds", "processor", "MB/s", "peak MB", "to bare");
  std::vector<Measured> bare, whole;
  for (std::size_t i = 0; i < bench.times; ++i) {  // by turns, so that a busy machine is busy for both
    bare.push_back(measure([&] {
      bare_xapian(texts, bench.fresh("bare"), true);
      return texts.size();
    }));
    whole.push_back(measure([&] { return bench.pipeline(bench.books, bench.threads); }));
  }
  const auto middle = [](std::vector<Measured>& all) {
    std::sort(all.begin(), all.end(), [](const Measured& a, const Measured& b) { return a.seconds < b.seconds; });
    return all[all.size() / 2];
  };
  const Measured yardstick = middle(bare);
  row("bare Xapian, positions", yardstick, mb, yardstick.seconds);
  row("bare Xapian, no positions",
      middling(bench.times,
               [&] {
                 bare_xapian(texts, bench.fresh("bare"), false);
                 return texts.size();
               }),
      mb, yardstick.seconds);
  const Measured pipeline = middle(whole);
  row("whole pipeline", pipeline, mb, yardstick.seconds);
  row("whole pipeline, one thread", middling(bench.times, [&] { return bench.pipeline(bench.books, 1); }), mb,
      yardstick.seconds);
  fmt::print("\n{} recipes, {:.0f} a second\n\n", pipeline.recipes,
             static_cast<double>(pipeline.recipes) / pipeline.seconds);
}

/// Wall time of each stage on one thread, a book at a time.
struct Stages {
  double read = 0, mine = 0, segment = 0, parse = 0, normalize = 0, encode = 0, document = 0, write = 0, weigh = 0;

  template <typename Work>
  static auto timed(double& into, Work work) {
    const auto start = Clock::now();
    auto out = work();
    into += seconds_since(start);
    return out;
  }
};

void run_stages(const Bench& bench, Stages& s) {
  Documents documents(*bench.lexicon);
  fs::create_directories(bench.fresh("stages"));
  Shards shards(bench.folder + "/stages/shard-", BuildOptions{}.shard_recipes, *bench.lexicon);
  for (const auto& book : bench.books) {
    const auto read = Stages::timed(s.read, [&] { return must(read_book_file(book.path)); });
    const auto told = Stages::timed(s.mine, [&] { return mine(read.blocks, book.id, *bench.lexicon); });
    Stages::timed(s.write, [&] {
      shards.add_statements(book.id, told);
      return 0;
    });
    auto cut = Stages::timed(s.segment, [&] { return segment(read.blocks, *bench.lexicon); });
    for (auto& recipe : cut.recipes) {
      auto parsed = Stages::timed(s.parse, [&] { return parse(recipe, *bench.lexicon); });
      const auto whole = Stages::timed(
          s.normalize, [&] { return normalize(std::move(recipe), std::move(parsed), book, 0, *bench.lexicon); });
      ComparableRecipe weighed = whole;
      Stages::timed(s.weigh, [&] {
        weigh(weighed, *bench.measures);
        return 0;
      });
      if (Stages::timed(s.encode, [&] { return encode(whole); }).empty()) throw std::runtime_error("nothing encoded");
      if (Stages::timed(s.document, [&] { return documents.of(whole); }).get_data().empty())
        throw std::runtime_error("no document made");
      Stages::timed(s.write, [&] {
        shards.add(whole);
        return 0;
      });
    }
  }
  Stages::timed(s.write, [&] { return shards.finish().size(); });
  s.write -= s.document;   // a shard makes the document that it writes, and a document its data: both have been
  s.document -= s.encode;  // measured by themselves
}

void by_stages(const Bench& bench) {
  Stages s;
  run_stages(bench, s);
  const double mb = bench.megabytes(bench.books);
  const double all = s.read + s.mine + s.segment + s.parse + s.normalize + s.encode + s.document + s.write;
  fmt::print("{:<34}{:>9}{:>10}{:>9}\n", "one thread, by stages", "seconds", "MB/s", "share");
  const auto line = [&](const char* name, double seconds) {
    fmt::print("{:<34}{:>9.2f}{:>10.1f}{:>8.1f}%\n", name, seconds, mb / seconds, 100 * seconds / all);
  };
  line("read", s.read);
  line("mine statements on measures", s.mine);
  line("segment", s.segment);
  line("parse", s.parse);
  line("normalize", s.normalize);
  line("encode", s.encode);
  line("make the Xapian document", s.document);
  line("write", s.write);
  line("together", all);
  line("reading the amounts, when asked", s.weigh);
  fmt::print("\n");
}

std::vector<Book> multiplied(const std::vector<Book>& books, unsigned times) {
  std::vector<Book> out;
  for (unsigned n = 0; n < times; ++n)
    for (Book book : books) {
      if (n > 0) book.id += fmt::format("-copy{}", n);
      out.push_back(std::move(book));
    }
  return out;
}

std::uintmax_t size_of(const std::string& folder) {
  std::uintmax_t n = 0;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file()) n += entry.file_size();
  return n;
}

void growing(const Bench& bench, const std::vector<unsigned>& steps) {
  fmt::print("{:<12}{:>10}{:>9}{:>10}{:>11}{:>8}{:>17}{:>9}{:>10}\n", "shelf times", "recipes", "MB", "seconds",
             "processor", "MB/s", "us per recipe", "peak MB", "index MB");
  for (const auto times : steps) {
    const auto books = multiplied(bench.books, times);
    const auto m = measure([&] { return bench.pipeline(books, bench.threads); });
    const double mb = bench.megabytes(books);
    fmt::print("{:<12}{:>10}{:>9.1f}{:>10.2f}{:>11.2f}{:>8.2f}{:>17.0f}{:>9.0f}{:>10.1f}\n", times, m.recipes, mb,
               m.seconds, m.processor, mb / m.seconds, 1e6 * m.processor / static_cast<double>(m.recipes), m.peak_mb,
               static_cast<double>(size_of(bench.folder + "/index")) / 1e6);
  }
}

/// A shelf of a useful size: the books over and over, with ids of their own.
std::vector<Book> useful(const std::vector<Book>& books, double least_mb) {
  double mb = 0;
  for (const auto& book : books) mb += static_cast<double>(fs::file_size(book.path)) / 1e6;
  return multiplied(books, std::max(1u, static_cast<unsigned>(least_mb / std::max(mb, 0.001) + 0.999)));
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("Measures indexing beside bare Xapian.");
  std::string list = "corpus-sample/books.json";
  Bench bench;
  std::vector<unsigned> grow;
  double least_mb = 0;
  bool stages_only = false, whole_only = false, keep = false;
  bench.folder = (fs::temp_directory_path() / fmt::format("gallipot-bench-{}", ::getpid())).string();
  app.add_option("--books", list, "a shelf list; without it the sample shelf, over and over up to 8 MB");
  app.add_option("--at-least", least_mb, "repeat the shelf up to this many MB");
  app.add_option("--times", bench.times, "measure so often and print the middling run")->check(CLI::PositiveNumber);
  app.add_option("--threads", bench.threads, "threads of the pipeline; 0 for as many as the machine has");
  app.add_option("--grow", grow, "index the shelf so many times over, as 1,4,16")->delimiter(',');
  app.add_option("--folder", bench.folder, "where indexes are written; removed at the end");
  app.add_flag("--stages", stages_only, "only the stages on one thread, in this process (for a profiler)");
  app.add_flag("--whole", whole_only, "only the whole pipeline, in this process (for a profiler)");
  app.add_flag("--keep", keep, "leave the indexes in the folder");
  CLI11_PARSE(app, argc, argv);
  int code = 0;
  try {
    bench.lexicon = must(Lexicon::load());
    bench.measures = must(Register::load());
    bench.books = useful(must(read_shelf_list(list)), app.count("--books") ? least_mb : std::max(least_mb, 8.0));
    fs::create_directories(bench.folder);
    if (whole_only) {
      bench.pipeline(bench.books, bench.threads);
    } else if (stages_only) {
      by_stages(bench);
    } else if (!grow.empty()) {
      growing(bench, grow);
    } else {
      beside_bare(bench);
      by_stages(bench);
    }
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    code = 2;
  } catch (const Xapian::Error& error) {
    fmt::print(stderr, "{}\n", error.get_msg());
    code = 2;
  }
  if (!keep) fs::remove_all(bench.folder);
  return code;
}
