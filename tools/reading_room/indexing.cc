// The one writer of the index that the room has.
#include "tools/reading_room/indexing.h"

#include <fmt/format.h>
#include <rapidjson/document.h>
#include <rapidjson/prettywriter.h>
#include <rapidjson/stringbuffer.h>

#include <algorithm>
#include <array>
#include <filesystem>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/keeping/whole_file.h"
#include "indexer/storing/build.h"
#include "indexer/storing/manifest.h"

namespace gallipot::room {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr std::size_t most_jobs_told = 20;

/// ".htm" of "Book.HTM"; empty where it is of no kind that the readers take.
std::string ending_of(const std::string& file_name) {
  std::string ending = fs::path(file_name).extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  if (ending == ".html") return ".htm";
  return ending == ".txt" || ending == ".htm" ? ending : std::string();
}

struct Field {
  const char* name;
  std::string Book::*member;
};
constexpr std::array<Field, 10> fields = {{{"id", &Book::id},
                                           {"file", &Book::file},
                                           {"title", &Book::title},
                                           {"creator", &Book::creator},
                                           {"date", &Book::date},
                                           {"first_published", &Book::first_published},
                                           {"publisher", &Book::publisher},
                                           {"place", &Book::place},
                                           {"country", &Book::country},
                                           {"edition", &Book::edition}}};

std::string as_list(const std::vector<Book>& books) {
  rapidjson::StringBuffer buffer;
  rapidjson::PrettyWriter<rapidjson::StringBuffer> json(buffer);
  json.SetIndent(' ', 1);
  json.StartObject();
  json.Key("books");
  json.StartArray();
  for (const Book& book : books) {
    json.StartObject();
    for (const Field& field : fields) {
      if ((book.*field.member).empty()) continue;
      json.Key(field.name);
      json.String(book.*field.member);
    }
    json.EndObject();
  }
  json.EndArray();
  json.EndObject();
  return std::string(buffer.GetString(), buffer.GetSize()) + "\n";
}

/// A shelf list without the sentence of where it lies, which is no one's business on a page.
Fault plainly(Fault fault) {
  fault.file.clear();
  fault.line = 0;
  return fault;
}

std::string summary(const BookReport& report, std::size_t recipes) {
  std::string out = fmt::format("{} recipes", recipes);
  if (report.doubtful > 0) out += fmt::format(", of which {} may be cut wrongly", report.doubtful);
  for (const Fault& doubt : report.doubts) out += "; " + doubt.what;
  return out + ".";
}

}  // namespace

Indexing::Indexing(std::string index, std::string catalogue, std::shared_ptr<const Lexicon> lexicon)
    : index_(std::move(index)),
      catalogue_(std::move(catalogue)),
      lexicon_(std::move(lexicon)),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

Indexing::~Indexing() {
  thread_.request_stop();
  changed_.notify_all();
}

unsigned Indexing::queue(Job job, std::function<void(Job&)> work) {
  const std::lock_guard lock(mutex_);
  job.number = static_cast<unsigned>(jobs_.size()) + 1;
  jobs_.push_back(job);
  waiting_.push_back({job, std::move(work)});
  changed_.notify_all();
  return job.number;
}

void Indexing::run(const std::stop_token& stop) {
  while (true) {
    Task task;
    {
      std::unique_lock lock(mutex_);
      if (!changed_.wait(lock, stop, [this] { return !waiting_.empty(); })) return;
      task = std::move(waiting_.front());
      waiting_.pop_front();
      task.job.state = Job::State::running;
      jobs_[task.job.number - 1] = task.job;
    }
    const auto start = Clock::now();
    try {
      task.work(task.job);
    } catch (const std::exception& error) {
      task.job.state = Job::State::refused;
      task.job.told = std::string("Something went wrong that was not foreseen: ") + error.what() + ".";
    }
    task.job.seconds = std::chrono::duration<double>(Clock::now() - start).count();
    const std::lock_guard lock(mutex_);
    jobs_[task.job.number - 1] = task.job;
  }
}

void Indexing::index_now(const Book& book, Job& job) const {
  BuildOptions options;
  options.threads = 1;  // the readers keep the other processors
  const auto report = build_index({book}, index_, *lexicon_, options);
  job.state = report ? Job::State::done : Job::State::refused;
  if (!report) {
    job.told = plainly(report.error()).sentence();
    return;
  }
  job.recipes = report->books[0].recipes;
  job.doubtful = report->books[0].doubtful;
  job.told = summary(report->books[0], job.recipes);
}

Outcome<unsigned> Indexing::add_book(Book book, const std::string& file_name, const std::string& bytes) {
  const std::lock_guard adding(adding_);
  const std::string ending = ending_of(file_name);
  if (ending.empty())
    return fault("that is no file that can be read as a book", "give a transcription as .txt or .htm");
  if (bytes.empty()) return fault("the file of the book is empty", "choose the file again");
  std::error_code error;
  fs::create_directories(added_folder(), error);
  if (error) return fault("the folder of added books cannot be made: " + error.message(), "see who may write there");
  const std::string list = added_folder() + "/books.json";
  std::vector<Book> books;
  if (fs::exists(list, error)) {
    auto there = read_shelf_list(list);
    if (!there) return tl::unexpected(there.error());
    books = std::move(*there);
  }
  if (const auto manifest = read_manifest(index_))
    for (const ShelvedBook& one : manifest->books)
      if (one.book.id == book.id)
        return fault(fmt::format("there is a book \"{}\" on the shelf already", book.id),
                     "give this one another short name");
  book.file = book.id + ending;
  std::erase_if(books, [&](const Book& one) { return one.id == book.id; });  // one that was refused before
  books.push_back(book);
  const std::string text = as_list(books);
  const auto checked = parse_shelf_list(text, list);
  if (!checked) return tl::unexpected(plainly(checked.error()));
  if (auto kept = replace_file(checked->back().path, bytes); !kept) return tl::unexpected(kept.error());
  if (auto kept = replace_file(list, text); !kept) return tl::unexpected(kept.error());
  Job job;
  job.book = book.id;
  job.title = book.title;
  job.what = "indexing";
  return queue(job, [this, entered = checked->back()](Job& running) { index_now(entered, running); });
}

Outcome<std::vector<Book>> Indexing::known_books() const {
  std::vector<Book> out;
  std::error_code ignored;
  for (const std::string& list : {added_folder() + "/books.json", catalogue_}) {
    if (list.empty() || !fs::exists(list, ignored)) continue;
    const auto some = read_shelf_list(list);
    if (!some) return tl::unexpected(some.error());
    out.insert(out.end(), some->begin(), some->end());
  }
  return out;
}

bool Indexing::renew(const std::string& book, bool cut) {
  const auto books = known_books();
  Job job;
  job.book = job.title = book;
  job.what = "putting the corrections into the search";
  if (books && cut) {
    const auto at = std::find_if(books->begin(), books->end(), [&](const Book& one) { return one.id == book; });
    if (at != books->end()) {
      job.what = "reading the book again";
      job.title = at->title;
      queue(job, [this, found = *at](Job& running) { index_now(found, running); });
      return true;
    }
  }
  if (cut) return false;
  queue(job, [this, book](Job& running) {
    const auto renewed = renew_book(book, index_, *lexicon_);
    running.state = renewed ? Job::State::done : Job::State::refused;
    running.told = renewed ? fmt::format("{} recipes are searched by their corrections.", *renewed)
                           : plainly(renewed.error()).sentence();
  });
  return true;
}

std::vector<Job> Indexing::jobs() const {
  const std::lock_guard lock(mutex_);
  std::vector<Job> out(jobs_.rbegin(), jobs_.rend());
  if (out.size() > most_jobs_told) out.resize(most_jobs_told);
  return out;
}

bool Indexing::busy() const {
  const std::lock_guard lock(mutex_);
  return std::any_of(jobs_.begin(), jobs_.end(), [](const Job& job) {
    return job.state == Job::State::waiting || job.state == Job::State::running;
  });
}

}  // namespace gallipot::room
